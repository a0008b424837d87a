import type { Catalog } from '../catalog/catalog';
import { profileOf } from './profile/profile';
import { readBoardLines } from './read-lines';

/** Lines that are looked at to tell whose text it is. */
const looked = 400;

/** The board whose profile knows most of a text's settings by name; null where none knows half of its lines. */
export function recognisedBoard(catalog: Catalog, text: string): string | null {
  const start = firstLines(text);
  let best: { readonly name: string; readonly share: number } | null = null;
  for (const board of catalog.boards.values()) {
    const profile = profileOf(board);
    if (profile === null) continue;
    const lines = readBoardLines(profile, start).filter(({ line }) => line.kind !== 'blank');
    const known = lines.filter(
      ({ line }) => line.kind === 'opening' || (line.kind === 'setting' && line.found !== undefined),
    );
    const counted = lines.filter(
      ({ line }) => line.kind === 'setting' || line.kind === 'unknown' || line.kind === 'opening',
    );
    const share = counted.length === 0 ? 0 : known.length / counted.length;
    if (share >= 0.5 && share > (best?.share ?? 0)) best = { name: board.name, share };
  }
  // Those of the workspace that nobody has read are asked for: once they are read, they may know it.
  if (best === null) for (const name of boardsToLookThrough(catalog)) catalog.board(name);
  return best?.name ?? null;
}

/** A folder of no more profiles than this is looked through; of more, one must be named. */
const few = 20;

/** Boards of the workspace whose profiles are to be read to tell whose text it is. */
export function boardsToLookThrough(catalog: Catalog): readonly string[] {
  const unread = catalog.unreadBoards();
  return unread.length <= few ? unread : [];
}

function firstLines(text: string): string {
  let at = 0;
  for (let line = 0; line < looked && at >= 0; line += 1) at = text.indexOf('\n', at + 1);
  return at < 0 ? text : text.slice(0, at);
}
