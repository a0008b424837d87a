import type { Catalog } from '../../catalog/catalog';
import type { BenchCard, CardPart, CardReading } from '../../sheet/bench-card/card';
import { type CardTaken, progressLine } from '../../sheet/bench-card/taken';
import { uncapitalised } from '../../units/capitals';
import { withUnit } from '../../units/number-text';
import { answerFault, asWritten, type FlightAnswer } from './note-flight';
import { asTyped, readingFault } from './reading-fault';

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
  /** What the note has no room for. */
  readonly comments: readonly string[];
  /** Whether something was read off in the air. */
  readonly isFlown: boolean;
}

export interface KeptReadings {
  readonly flights: readonly KeptFlight[];
  /** Settings that the script left open, with what was found, as a script writes it. */
  readonly settings: ReadonlyMap<string, string>;
  readonly faults: readonly ReadingFault[];
}

/**
 * Readings of a card as the settings of flights, one for each pack, and as settings that the script left open. Fields
 * left empty are left out. What was not ticked on a card that is ticked stands first in the first note.
 */
export function keptReadings(
  card: BenchCard,
  taken: CardTaken,
  catalog: Catalog,
  today: string,
): KeptReadings {
  const values = new Map(taken.readings.map(({ id, value }) => [id, asTyped(value)]));
  const filled = card.parts.flatMap(rooms).flatMap((room): readonly Filled[] => {
    const typed = values.get(room.reading.id) ?? '';
    return typed === '' ? [] : [{ ...room, typed }];
  });
  const faults = filled.flatMap(({ reading, typed }) => {
    const message = readingFault(catalog, reading, typed);
    return message === null ? [] : [{ id: reading.id, message }];
  });
  const settings = new Map(
    filled.flatMap(({ reading: { script }, typed }): readonly (readonly [string, string])[] => {
      const found = script === null ? undefined : catalog.parameter(script);
      return found === undefined || script === null ? [] : [[script, asWritten(found, typed)]];
    }),
  );
  const noted = filled.filter(({ reading }) => reading.script === null);
  const kept = byPack(card, noted).map(({ pack, own }, index) =>
    keptFlight({ pack, own, first: index === 0 ? progressLine(card, taken) : null }, catalog, today),
  );
  return {
    flights: kept.map(({ flight }) => flight),
    settings,
    faults: faults.length > 0 ? faults : kept.flatMap(({ fault }) => fault ?? []),
  };
}

/** Room on the card, with what it stands under. */
interface RoomForReading {
  readonly reading: CardReading;
  readonly under: string;
  readonly pack: string | null;
  readonly stage: CardPart['stage'];
}

interface Filled extends RoomForReading {
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

interface ToKeep extends ReadWith {
  /** What the note begins with. */
  readonly first: string | null;
}

function keptFlight(
  { pack, own, first }: ToKeep,
  catalog: Catalog,
  today: string,
): { readonly flight: KeptFlight; readonly fault: ReadingFault | null } {
  const settings = own.flatMap(({ reading: { setting }, typed }) =>
    setting === null || setting === 'note' ? [] : [{ setting, typed }],
  );
  const said = own.filter(({ reading }) => reading.setting === 'note').map(({ typed }) => typed);
  const told = own.filter(({ reading }) => reading.setting === null).map(sentenceOfReading);
  const { note, comments, message } = noteOf(first === null ? [] : [first], said, told, catalog);
  const flight: KeptFlight = {
    pack,
    answers: [
      { setting: 'date', typed: today },
      ...(pack === null ? [] : [{ setting: 'pack', typed: pack }]),
      ...settings,
      ...(note === '' ? [] : [{ setting: 'note', typed: note }]),
    ],
    comments,
    isFlown: own.some(({ stage }) => stage === 'hover'),
  };
  const last = own.findLast(({ reading: { setting } }) => setting === 'note');
  if (message === null || last === undefined) return { flight, fault: null };
  return { flight, fault: { id: last.reading.id, message: `This makes too long a note. ${message}` } };
}

/** "No short circuit: at the battery pads after five seconds 12000 ohm" */
function sentenceOfReading({ reading: { words, unit }, under, typed }: Filled): string {
  return `${under}: ${uncapitalised(words)} ${withUnit(typed, unit)}`;
}

/**
 * A note takes so many signs: what it has no room for becomes comments, the readings before what was not ticked, and
 * never the pilot's own words.
 */
function noteOf(
  first: readonly string[],
  said: readonly string[],
  told: readonly string[],
  catalog: Catalog,
): { readonly note: string; readonly comments: readonly string[]; readonly message: string | null } {
  const faultOf = (note: string) =>
    note === '' ? null : answerFault(catalog, { setting: 'note', typed: note });
  const ways = [
    { noted: [...first, ...said, ...told], comments: [] },
    { noted: [...first, ...said], comments: told },
    { noted: said, comments: [...first, ...told] },
  ].map(({ noted, comments }) => ({ note: noted.join('; ').replaceAll('.; ', '. '), comments }));
  const last = ways.at(-1) ?? { note: '', comments: [] };
  const way = ways.find(({ note }) => faultOf(note) === null) ?? last;
  return { ...way, message: faultOf(way.note) };
}

/** All room of a part but that for names: who did it stays on the card. */
function rooms({ stage, title, steps, noticed }: CardPart): readonly RoomForReading[] {
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
