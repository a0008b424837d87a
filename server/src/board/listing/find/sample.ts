import { hasLetterOrDigit, trimmed } from '../text/characters';
import { isDamaged } from '../text/damage';
import type { ListingLine } from '../text/line';

/** Lines to find forms in, without blanks around them. */
export interface Sample {
  readonly index: number;
  readonly text: string;
}

const most = 1200;
const pieces = 24;
const longest = 4000;

/** All lines that say something; of a long listing, stretches from everywhere in it. */
export function sampleOf(lines: readonly ListingLine[], indices: readonly number[]): readonly Sample[] {
  const chosen = indices.length <= most ? indices : stretches(indices);
  return chosen.flatMap((index) => {
    const text = lines[index]?.text ?? '';
    if (text.length > longest || isDamaged(text)) return [];
    const [start, end] = trimmed(text);
    const body = text.slice(start, end);
    return hasLetterOrDigit(body) ? [{ index, text: body }] : [];
  });
}

function stretches(indices: readonly number[]): readonly number[] {
  const length = Math.floor(most / pieces);
  return Array.from({ length: pieces }, (_, piece) => {
    const start = Math.floor(((indices.length - length) * piece) / (pieces - 1));
    return indices.slice(start, start + length);
  }).flat();
}
