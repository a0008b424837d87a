import type { Catalog } from '../../catalog/catalog';
import type { BenchCard, CardReading } from '../../sheet/bench-card/bench-card';
import { withUnit } from '../../units/number-text';
import { answerFault, type FlightAnswer } from './note-flight';

/** What was written into a field of the bench card. */
export interface ReadingTaken {
  /** As on the card. */
  readonly id: string;
  readonly value: string;
}

/** A reading that can't be kept; why, in a sentence. */
export interface ReadingFault {
  readonly id: string;
  readonly message: string;
}

export interface KeptReadings {
  /** What a flight's section takes of them; the note holds what it has no setting for. */
  readonly answers: readonly FlightAnswer[];
  readonly faults: readonly ReadingFault[];
  /** Whether something was read off in the air. */
  readonly isFlown: boolean;
}

/** Readings of a card as the settings of a flight, or of a day at the bench. Fields left empty are left out. */
export function keptReadings(
  { parts, pack }: BenchCard,
  taken: readonly ReadingTaken[],
  catalog: Catalog,
  today: string,
): KeptReadings {
  const values = new Map(taken.map(({ id, value }) => [id, value.trim()]));
  const flown = parts.filter(({ stage }) => stage === 'hover').flatMap(readings);
  const all = parts.flatMap(readings).flatMap((reading) => {
    const value = values.get(reading.id) ?? '';
    return value === '' ? [] : [{ reading, value }];
  });
  const own = all.flatMap(({ reading, value }) =>
    reading.setting === null ? [] : [{ id: reading.id, setting: reading.setting, typed: value }],
  );
  const faults = own.flatMap(({ id, ...answer }) => {
    const message = answerFault(catalog, answer);
    return message === null ? [] : [{ id, message }];
  });
  const others = all
    .filter(({ reading }) => reading.setting === null)
    .map(
      ({ reading: { step, words: about, unit }, value }) =>
        `${step}: ${about.toLowerCase()} ${withUnit(value, unit)}`,
    );
  const said = own.find(({ setting }) => setting === 'note');
  const words = [...(said === undefined ? [] : [said.typed]), ...others].join('; ');
  const note = words === '' ? [] : [{ setting: 'note', typed: words }];
  const noteFault = note.map((answer) => answerFault(catalog, answer)).find((message) => message !== null);
  const last = all.findLast(({ reading }) => reading.setting === null)?.reading.id ?? said?.id;
  return {
    answers: [
      { setting: 'date', typed: today },
      ...(pack === null ? [] : [{ setting: 'pack', typed: pack }]),
      ...own.filter(({ setting }) => setting !== 'note').map(({ setting, typed }) => ({ setting, typed })),
      ...note,
    ],
    faults:
      noteFault === undefined || noteFault === null || last === undefined
        ? faults
        : [...faults, { id: last, message: `Together the readings make too long a note. ${noteFault}` }],
    isFlown: flown.some(({ id }) => (values.get(id) ?? '') !== ''),
  };
}

function readings({
  steps,
}: BenchCard['parts'][number]): readonly (CardReading & { readonly step: string })[] {
  return steps.flatMap(({ title, readings: own }) => own.map((reading) => ({ ...reading, step: title })));
}
