import type { Catalog } from '../../catalog/catalog';
import { boardNameFault } from '../profile/board-name';
import { type Profile, profileOf } from '../profile/profile';
import type { BoardLayer } from './layer';
import { boardsToLookThrough, recognisedProfile } from './recognised-profile';

/** What is known of whose text it is, besides the text itself. */
export interface TextOrigin {
  readonly catalog: Catalog;
  /** The file's name, without its folder. */
  readonly fileName: string;
  /** The board that the pilot picked for it. */
  readonly picked: string | null;
}

/** By which profile a text is read: the picked one, the one of its file's name, one that knows it; null: by none. */
export function profileOfText(text: string, origin: TextOrigin): Profile | null {
  const { catalog } = origin;
  for (const name of namesFor(origin)) {
    const profile = named(catalog, name);
    // One that is being read now is not to be beaten by one that only looks like it.
    if (profile !== null || catalog.isUnread(name)) return profile;
  }
  return recognisedProfile(catalog, text);
}

/** Whether profiles are still being read one of which may be that of the text. */
export function awaitsProfile({ profile }: BoardLayer, origin: TextOrigin): boolean {
  const { catalog } = origin;
  if (profile !== null) return false;
  return namesFor(origin).some((name) => catalog.isUnread(name)) || boardsToLookThrough(catalog).length > 0;
}

function namesFor({ picked, fileName }: TextOrigin): readonly string[] {
  return [picked, boardNameOf(fileName)].flatMap((name) => name ?? []);
}

function named(catalog: Catalog, name: string): Profile | null {
  const board = catalog.board(name);
  return board === undefined ? null : profileOf(board);
}

const longestName = 40;

/** A file's name as the name of a board: `My Quad 2.boardtext` is `my-quad-2`; null where no letter is in it. */
export function boardNameOf(fileName: string): string | null {
  const dot = fileName.lastIndexOf('.');
  const plain = (dot < 0 ? fileName : fileName.slice(0, dot))
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '');
  const words = (plain.match(/[a-z0-9]+/g) ?? [])
    .join('-')
    .replace(/^[-0-9]+/, '')
    .slice(0, longestName);
  const name = words.endsWith('-') ? words.slice(0, -1) : words;
  return boardNameFault(name) === null ? name : null;
}
