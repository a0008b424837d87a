/** The stages of the job in its order, with what they ask for. */
export const jobStages = [
  ['wire', 'Wire it'],
  ['obey', 'Make it obey'],
  ['turn', 'Make it turn'],
  ['tune', 'Make it fly well'],
  ['see', 'See'],
  ['safe', 'Stay safe'],
  ['remember', 'Remember'],
] as const;
