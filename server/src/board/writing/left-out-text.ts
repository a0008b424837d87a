import type { CraftView } from '../../craft/view';
import { calledOnBoard } from './called';
import type { Entries } from './entries';
import { type LeftOut, leftOutName } from './left-out';
import type { WrittenText } from './write-text';

/** So many are named in a sentence. */
const mostNamed = 8;

/** What the board should hold and the text does not, in sentences: set by hand and safety first. */
export function leftOutText(
  { entries, left }: Entries,
  { unwritten }: WrittenText,
  view: CraftView,
): readonly string[] {
  const ofBoard = left.filter(({ heldBy }) => heldBy === 'board');
  const missing = ofBoard.length + unwritten.length;
  const unnamed = ofBoard.filter(({ reason }) => reason === null);
  const refused = left.filter(({ reason }) => reason !== null);
  const all = new Set([...entries, ...left].map(({ path }) => path)).size;
  return [
    ...(missing === 0
      ? []
      : [`${missing} of ${all} not handed over${unnamed.length === 0 ? '' : `: ${named(unnamed)}`}.`]),
    ...refused.map(
      ({ path, settings, reason }) =>
        `Not handed over: ${calledOnBoard(view, path, settings)}: ${reason ?? ''}.`,
    ),
    ...unwritten.map(
      ({ entry, reason }) => `Not handed over: ${calledOnBoard(view, entry.path, [entry])}: ${reason}.`,
    ),
  ];
}

/** What no board needs to be told, in sentences. */
export function heldElsewhereText({ left }: Entries): readonly string[] {
  const unnamed = left.filter(({ reason }) => reason === null);
  const facts = unnamed.filter(({ heldBy }) => heldBy === 'fact').length;
  const others = unnamed.filter(({ heldBy }) => heldBy === 'transmitter' || heldBy === 'device');
  return [
    ...(others.length === 0
      ? []
      : [`Set at the transmitter or in another device, by hand: ${named(others)}.`]),
    ...(facts === 0
      ? []
      : [facts === 1 ? '1 is a fact that no board holds.' : `${facts} are facts that no board holds.`]),
  ];
}

function named(left: readonly LeftOut[]): string {
  const titles = left.slice(0, mostNamed).map(leftOutName);
  const more = left.length - titles.length;
  return titles.join(', ') + (more > 0 ? ` and ${more} more` : '');
}
