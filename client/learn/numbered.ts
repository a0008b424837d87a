import type { MeaningRow } from '../../server/src/lsp/learn-protocol';

/** A setting that is called as another one is but for its number, with how far its number is from that one's. */
export interface NumberedAlike {
  readonly row: MeaningRow;
  readonly off: number;
}

/** The others of one, two, three and so on, in their order. */
export function numberedAlike(rows: readonly MeaningRow[], { key }: MeaningRow): readonly NumberedAlike[] {
  return rows.flatMap((row) => {
    const off = row.key === key || row.isShared ? null : numberOff(key, row.key);
    return off === null ? [] : [{ row, off }];
  });
}

/** How far the one number in which two names differ is; null where they differ in more. */
function numberOff(one: string, other: string): number | null {
  const [mine, theirs] = [one, other].map((text) => text.split(/(\d+)/));
  if (mine === undefined || theirs === undefined || mine.length !== theirs.length) return null;
  const places = mine.flatMap((part, index) => (part === theirs[index] ? [] : [index]));
  const [place] = places;
  if (place === undefined || places.length > 1 || place % 2 === 0) return null;
  return Number(theirs[place]) - Number(mine[place]);
}

/** A name that ends in a number, as many further; null for one without. */
export function numberedFurther(name: string, off: number): string | null {
  const parts = name.split(/(\d+)/);
  const number = parts.at(-1) === '' ? parts.at(-2) : undefined;
  const word = parts.slice(0, -2).join('');
  const further = Number(number) + off;
  return number === undefined || further < 0 ? null : `${word}${further}`;
}
