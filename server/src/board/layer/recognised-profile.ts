import type { Catalog } from '../../catalog/catalog';
import { readListing } from '../listing/read-listing';
import { type Profile, profileOf } from '../profile/profile';

/** Lines that are looked at to tell whose text it is. */
const looked = 400;

/** The profile that knows most of a text's settings by name; null where none knows half of its lines. */
export function recognisedProfile(catalog: Catalog, text: string): Profile | null {
  const start = firstLines(text);
  let best: { readonly profile: Profile; readonly share: number } | null = null;
  for (const board of catalog.boards.values()) {
    const profile = profileOf(board);
    if (profile === null) continue;
    const share = shareKnown(profile, start);
    if (share >= 0.5 && share > (best?.share ?? 0)) best = { profile, share };
  }
  // Those of the workspace that nobody has read are asked for: once they are read, they may know it.
  if (best === null) for (const name of boardsToLookThrough(catalog)) catalog.board(name);
  return best?.profile ?? null;
}

/** A folder of no more profiles than this is looked through; of more, one must be named. */
const few = 20;

/** Boards of the workspace whose profiles are to be read to tell whose text it is. */
export function boardsToLookThrough(catalog: Catalog): readonly string[] {
  const unread = catalog.unreadBoards();
  return unread.length <= few ? unread : [];
}

function shareKnown(profile: Profile, text: string): number {
  const { settings, openings, left } = readListing(text, profile.text.forms);
  const known = settings.filter(
    ({ groups, name, occurrence }) => profile.find(groups, name, occurrence) !== undefined,
  );
  // What stands before the first setting is the board's own where the profile tells such lines.
  const opened = Math.min(openings.length, profile.text.forms.opening.length);
  const counted = settings.length + left.length + openings.length;
  return counted === 0 ? 0 : (known.length + opened) / counted;
}

function firstLines(text: string): string {
  let at = 0;
  for (let line = 0; line < looked && at >= 0; line += 1) at = text.indexOf('\n', at + 1);
  return at < 0 ? text : text.slice(0, at);
}
