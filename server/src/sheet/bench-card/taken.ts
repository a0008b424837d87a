import { listed } from '../../checks/report/listed';
import type { BenchCard, CardFigure, CardPart, CardStep } from './card';
import { expectedWords } from './words';

/** What was written into a field of the card. */
export interface ReadingTaken {
  /** As on the card. */
  readonly id: string;
  readonly value: string;
}

/** A step that was done, and what the card said of it then. */
export interface Tick {
  readonly id: string;
  readonly told: readonly string[];
}

/** What a pilot has ticked and written on a card. */
export interface CardTaken {
  readonly ticked: readonly Tick[];
  readonly readings: readonly ReadingTaken[];
}

/** The same with what of it is in the script: the bench is one evening's, the flight another morning's. */
export interface CardKept extends CardTaken {
  readonly written: readonly ReadingTaken[];
}

export const nothingTaken: CardKept = { ticked: [], readings: [], written: [] };

/** What is to be done and seen in a step, with all its figures: a tick stands for these and no others. */
function toldBy({ do: what, see, expected, withPacks }: CardStep): readonly string[] {
  return [
    ...expected.map((figure) => figureLine(figure, '')),
    ...withPacks.flatMap(({ pack, expected: own }) => own.map((figure) => figureLine(figure, `, ${pack}`))),
    see,
    what,
  ];
}

/** "Throttle in the hover, sprint: 25.5 %, 22.6 to 29.1" */
function figureLine(figure: CardFigure, pack: string): string {
  const { text, between } = expectedWords(figure);
  return `${figure.words}${pack}: ${text}${between}`;
}

export function isTicked(step: CardStep, { ticked }: CardTaken): boolean {
  const tick = ticked.find(({ id }) => id === step.id);
  return tick !== undefined && differing(toldBy(step), tick.told) === null;
}

/** Why a step that was ticked is so no more, in a sentence; null where it is, or never was. */
export function tickLost(step: CardStep, { ticked }: CardTaken): string | null {
  const tick = ticked.find(({ id }) => id === step.id);
  if (tick === undefined) return null;
  const found = differing(toldBy(step), tick.told);
  if (found === null) return null;
  const said = found.before === null ? 'There is more to it now' : `It said “${found.before}”`;
  return `This has changed since it was ticked: do it again. ${said}.`;
}

/** The same step ticked, as it reads now, or not. */
export function withTick(taken: CardKept, step: CardStep, isDone: boolean): CardKept {
  const others = taken.ticked.filter(({ id }) => id !== step.id);
  return { ...taken, ticked: isDone ? [...others, { id: step.id, told: toldBy(step) }] : others };
}

/** A reading as it is typed; an empty field is none. */
export function withReading(taken: CardKept, id: string, value: string): CardKept {
  const others = taken.readings.filter((one) => one.id !== id);
  return { ...taken, readings: value === '' ? others : [...others, { id, value }] };
}

/** What is written on the card and not in the script yet; fields left empty are left out. */
export function notWritten({ readings, written }: CardKept): readonly ReadingTaken[] {
  const isWritten = ({ id, value }: ReadingTaken) =>
    written.some((one) => one.id === id && one.value === value);
  return readings.filter((one) => one.value.trim() !== '' && !isWritten(one));
}

/** The same with these readings in the script. */
export function withWritten(taken: CardKept, readings: readonly ReadingTaken[]): CardKept {
  const isAgain = ({ id }: ReadingTaken) => readings.some((one) => one.id === id);
  return { ...taken, written: [...taken.written.filter((one) => !isAgain(one)), ...readings] };
}

/**
 * What two have taken on one card that both had as it was `before`, in two windows or tabs: of a row that only one of
 * them has changed its change counts, of one that both have `mine`.
 */
export function takenTogether(before: CardKept, mine: CardKept, theirs: CardKept): CardKept {
  return {
    ticked: rowsTogether(before.ticked, mine.ticked, theirs.ticked),
    readings: rowsTogether(before.readings, mine.readings, theirs.readings),
    written: rowsTogether(before.written, mine.written, theirs.written),
  };
}

function rowsTogether<Row extends { readonly id: string }>(
  before: readonly Row[],
  mine: readonly Row[],
  theirs: readonly Row[],
): readonly Row[] {
  const rowIn = (rows: readonly Row[], id: string) => JSON.stringify(rows.find((row) => row.id === id));
  const isMine = ({ id }: Row) => rowIn(before, id) !== rowIn(mine, id);
  return [...theirs.filter((row) => !isMine(row)), ...mine.filter(isMine)];
}

/** What was written into a field; empty where nothing was. */
export function writtenIn(id: string, { readings }: CardTaken): string {
  return readings.find((one) => one.id === id)?.value ?? '';
}

/** How many steps are ticked, of how many. */
export function progress(
  steps: readonly CardStep[],
  taken: CardTaken,
): { readonly done: number; readonly all: number } {
  return { done: steps.filter((step) => isTicked(step, taken)).length, all: steps.length };
}

/**
 * What is not ticked, in the words of the card: a part of which nothing is by its name, the others by their steps; empty
 * where all is. `most`: of how many names to tell.
 */
export function notTicked({ parts }: Pick<BenchCard, 'parts'>, taken: CardTaken, most = 6): string {
  const names = parts.flatMap((part) => openIn(part, taken));
  const more = names.length - most;
  return listed(more > 1 ? [...names.slice(0, most), `${more} more`] : names);
}

function openIn({ title, steps }: CardPart, taken: CardTaken): readonly string[] {
  const open = steps.filter((step) => !isTicked(step, taken));
  return open.length === steps.length && open.length > 1
    ? [`all of “${title}”`]
    : open.map((step) => `“${step.title}”`);
}

/** The parts that are done with the propellers off. */
export function benchParts({ parts }: Pick<BenchCard, 'parts'>): readonly CardPart[] {
  return parts.filter(({ stage }) => stage !== 'hover');
}

/** What stands first on a card that is printed or kept: what was not ticked. Null for a card on which nothing is. */
export function progressLine(card: BenchCard, taken: CardTaken): string | null {
  const steps = card.parts.flatMap((part) => part.steps);
  const { done, all } = progress(steps, taken);
  if (done === 0) return null;
  const open = notTicked(card, taken);
  return open === '' ? `All ${all} steps are ticked.` : `Not ticked: ${open}. ${done} of ${all} steps are.`;
}

/** The first thing in which two tellings of a step differ: null where they agree. `before`: null where it is new. */
function differing(
  now: readonly string[],
  before: readonly string[],
): { readonly before: string | null } | null {
  if (now.length === before.length && now.every((text, at) => text === before[at])) return null;
  return { before: before.find((text) => !now.includes(text)) ?? null };
}

/** What was kept, read back from wherever it was: whatever has another form is left out. */
export function takenFrom(kept: unknown): CardKept {
  const listOf = (name: string): readonly unknown[] => {
    const held: unknown = typeof kept === 'object' && kept !== null ? Reflect.get(kept, name) : undefined;
    return Array.isArray(held) ? held : [];
  };
  return {
    ticked: listOf('ticked').filter(isTick),
    readings: listOf('readings').filter(isReading),
    written: listOf('written').filter(isReading),
  };
}

function isTick(value: unknown): value is Tick {
  if (typeof value !== 'object' || value === null) return false;
  const told: unknown = Reflect.get(value, 'told');
  const isTold = Array.isArray(told) && told.every((text) => typeof text === 'string');
  return isTold && typeof Reflect.get(value, 'id') === 'string';
}

function isReading(value: unknown): value is ReadingTaken {
  if (typeof value !== 'object' || value === null) return false;
  return ['id', 'value'].every((name) => typeof Reflect.get(value, name) === 'string');
}
