/** What a pilot asks of a recording, in this order: on the page and on the command line alike. */
export const recordingQuestions = {
  shake: 'Does it shake, and from what?',
  follow: 'Does it follow?',
  late: 'Is it late?',
  motors: 'Do the motors work alike?',
  pack: 'What does the pack give?',
  hover: 'What does hovering take?',
  link: 'Does the link hold?',
  gains: 'What do the board’s numbers mean?',
} as const;

export type RecordingQuestion = keyof typeof recordingQuestions;
