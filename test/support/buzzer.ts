/** A tune for the buzzer: a setting that no catalogue has, with a word, a range and a rule. */
export const buzzer = {
  parameters: [
    {
      kind: 'quantity',
      name: 'buzzer.tune',
      title: 'Pitch of the buzzer',
      summary: 'The pitch at which the buzzer calls; a small buzzer is loudest near its own resonance.',
      dimension: 'frequency',
      unit: 'kHz',
      range: ['100 Hz', '10 kHz'],
      usual: ['2 kHz', '4 kHz'],
      orWords: [{ name: 'off', summary: 'The buzzer stays silent, come what may.' }],
      related: ['find.device'],
      alsoCalled: ['beeper note'],
    },
  ],
  checks: [
    {
      id: 'buzzer/shrill',
      level: 'risk',
      title: 'The buzzer is heard from afar',
      message: 'At {buzzer.tune} the call does not carry far.',
      advice: 'Stay below 3 kHz.',
      when: ['buzzer.tune > 3 kHz'],
      at: 'buzzer.tune',
      fixes: [{ title: 'Call at 2.7 kHz', set: 'buzzer.tune', to: '2.7 kHz' }],
    },
  ],
} as const;

export type Written = Readonly<Record<string, unknown>>;

export function textOf(told: Written | string): string {
  return typeof told === 'string' ? told : JSON.stringify(told, null, 2);
}

/** A chemistry that nothing ships with. */
export const sodiumIon = {
  name: 'sodium-ion',
  title: 'Sodium-ion',
  summary: 'Cells that bear the cold and hold less.',
  full: '3.9 V',
  nominal: '3.1 V',
  warn: '2.6 V',
  land: '2.4 V',
  storage: '3 V',
  empty: '2 V',
  risk: 'Charged as lithium cells they are overfilled at once.',
};
