import type { Catalog } from '../../catalog/catalog';
import type { BenchCard, CardPart, CardReading } from '../../sheet/bench-card/card';
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

/** What becomes the section of one flight, or of a day at the bench. */
export interface KeptFlight {
  /** Null: it holds for none of the card's packs alone. */
  readonly pack: string | null;
  /** What the section takes; its note holds what it has no setting for. */
  readonly answers: readonly FlightAnswer[];
  /** Whether something was read off in the air. */
  readonly isFlown: boolean;
}

export interface KeptReadings {
  readonly flights: readonly KeptFlight[];
  readonly faults: readonly ReadingFault[];
}

/** Readings of a card as the settings of flights, one for each pack. Fields left empty are left out. */
export function keptReadings(
  card: BenchCard,
  taken: readonly ReadingTaken[],
  catalog: Catalog,
  today: string,
): KeptReadings {
  const values = new Map(taken.map(({ id, value }) => [id, value.trim()]));
  const filled = card.parts.flatMap(rooms).flatMap((room): readonly Filled[] => {
    const typed = values.get(room.reading.id) ?? '';
    return typed === '' ? [] : [{ ...room, typed }];
  });
  const kept = byPack(card, filled).map(({ pack, own }) => keptFlight(pack, own, catalog, today));
  return {
    flights: kept.map(({ flight }) => flight),
    faults: kept.flatMap(({ faults }) => faults),
  };
}

/** Room on the card, with what it stands under. */
interface Room {
  readonly reading: CardReading;
  readonly under: string;
  readonly pack: string | null;
  readonly stage: CardPart['stage'];
}

interface Filled extends Room {
  readonly typed: string;
}

interface ReadWith {
  readonly pack: string | null;
  readonly own: readonly Filled[];
}

/** What was read off with no pack by name goes to the only one that there is, else it stands by itself. */
function byPack({ packs }: BenchCard, filled: readonly Filled[]): readonly ReadWith[] {
  const named = packs.filter((pack) => filled.some((one) => one.pack === pack));
  const only = named.length === 1 ? named[0] : packs.length === 1 ? packs[0] : undefined;
  const loose = filled.filter(({ pack }) => pack === null);
  if (only !== undefined) return filled.length === 0 ? [] : [{ pack: only, own: filled }];
  return [
    ...(loose.length === 0 ? [] : [{ pack: null, own: loose }]),
    ...named.map((pack) => ({ pack, own: filled.filter((one) => one.pack === pack) })),
  ];
}

function keptFlight(pack: string | null, own: readonly Filled[], catalog: Catalog, today: string) {
  const settings = own.flatMap(({ reading: { id, setting }, typed }) =>
    setting === null || setting === 'note' ? [] : [{ id, setting, typed }],
  );
  const faults = settings.flatMap(({ id, ...answer }) => {
    const message = answerFault(catalog, answer);
    return message === null ? [] : [{ id, message }];
  });
  const said = own.filter(({ reading }) => reading.setting === 'note').map(({ typed }) => typed);
  const others = own.filter(({ reading }) => reading.setting === null);
  const told = others.map(
    ({ reading: { words, unit }, under, typed }) =>
      `${under}: ${words.charAt(0).toLowerCase()}${words.slice(1)} ${withUnit(typed, unit)}`,
  );
  const words = [...said, ...told].join('; ');
  const note = words === '' ? [] : [{ setting: 'note', typed: words }];
  const [noteFault] = note.flatMap((answer) => answerFault(catalog, answer) ?? []);
  const last = own.findLast(({ reading: { setting } }) => setting === null || setting === 'note');
  const flight: KeptFlight = {
    pack,
    answers: [
      { setting: 'date', typed: today },
      ...(pack === null ? [] : [{ setting: 'pack', typed: pack }]),
      ...settings.map(({ setting, typed }) => ({ setting, typed })),
      ...note,
    ],
    isFlown: own.some(({ stage }) => stage === 'hover'),
  };
  if (noteFault === undefined || last === undefined) return { flight, faults };
  const message = `Together the readings make too long a note. ${noteFault}`;
  return { flight, faults: [...faults, { id: last.reading.id, message }] };
}

/** All room of a part but that for names: who did it stays on the card. */
function rooms({ stage, title, steps, noticed }: CardPart): readonly Room[] {
  return [
    ...steps.flatMap(({ title: under, readings, withPacks, asked }) => [
      ...readings.map((reading) => ({ reading, under, pack: null, stage })),
      ...withPacks.flatMap(({ pack, readings: own }) =>
        own.map((reading) => ({ reading, under, pack, stage })),
      ),
      ...asked.map((reading) => ({ reading, under, pack: null, stage })),
    ]),
    { reading: noticed, under: title, pack: null, stage },
  ];
}
