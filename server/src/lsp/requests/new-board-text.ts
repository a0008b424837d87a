import { LayerReader } from '../../board/layer/layer-reader';
import { boardNameOf, profileOfText } from '../../board/layer/profile-of-text';
import { learnedProfile } from '../../board/learn/learned-profile';
import { profileText } from '../../board/learn/profile-text';
import { nothingConfirmed } from '../../board/learn/said';
import { readListing } from '../../board/listing/read-listing';
import type { Catalog } from '../../catalog/catalog';
import { groupCount } from '../../features/board/group-count';
import type { NewBoardText, NewBoardTextParams } from '../board-protocol';
import type { Services } from './row';

/** What a text comes to that is to be a board's text; null where no line of it looks like a setting. */
export async function newBoardText(
  { session: { workspace } }: Services,
  { text, fileName }: NewBoardTextParams,
): Promise<NewBoardText | null> {
  const own = boardNameOf(fileName) ?? 'board';
  await workspace.boardRead(own);
  const { catalog } = workspace;
  const known = knownBoard(text, fileName, catalog);
  if (known !== null) return { ...known, isByName: known.board === own };
  const listing = readListing(text, null);
  const board = freeBoardName(own, catalog);
  const made = learnedProfile(listing, board, nothingConfirmed, catalog);
  if (made === null) return null;
  return {
    board,
    profile: profileText(made.profile),
    isByName: board === own,
    settings: listing.settings.length,
    groups: groupCount(listing.settings),
    left: listing.left.length,
  };
}

/** A board that lists every setting of the text. */
function knownBoard(text: string, fileName: string, catalog: Catalog): Omit<NewBoardText, 'isByName'> | null {
  const profile = profileOfText(text, { catalog, fileName, picked: null });
  if (profile === null) return null;
  const { settings, lines, left } = new LayerReader(catalog, profile).read(text);
  if (settings.length === 0 || lines.some(({ found }) => found === undefined)) return null;
  return {
    board: profile.name,
    profile: null,
    settings: settings.length,
    groups: groupCount(settings),
    left: left.length,
  };
}

/** A name that no board has yet: nothing is overwritten. */
export function freeBoardName(wanted: string, catalog: Catalog): string {
  const taken = new Set(catalog.boardNames());
  let name = wanted;
  for (let number = 2; taken.has(name); number += 1) name = `${wanted}-${number}`;
  return name;
}
