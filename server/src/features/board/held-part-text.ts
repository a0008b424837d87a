import type { PartHeld } from '../../catalog/model/board-profile';
import { code } from '../markdown';

/** Which part of its parameter a setting of the board holds, as Markdown; null where it holds all of it. */
export function heldPartText(as: PartHeld | undefined): string | null {
  if (as === undefined) return null;
  if (typeof as === 'string') return `This is ${partNames[as]}.`;
  if ('cell' in as)
    return `This is one number for its place: the row times ${as.cell}, and the column to that, both from 0.`;
  if ('at' in as) return `This is what it is at ${code(as.at)}.`;
  if ('entry' in as) return `This is number ${as.entry} of its list.`;
  if ('has' in as) return `This says whether ${code(as.has)} is in its list.`;
  return `This is the place of ${code(as.numberOf)} in its list.`;
}

const partNames = {
  low: 'its lower end',
  high: 'its upper end',
  row: 'its row',
  column: 'its column',
} as const;
