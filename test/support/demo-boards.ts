import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readListing } from '../../server/src/board/listing/read-listing';
import { type Profile, profileOf } from '../../server/src/board/profile/profile';
import { entriesOf } from '../../server/src/board/writing/entries';
import { writeText } from '../../server/src/board/writing/write-text';
import { CraftView } from '../../server/src/craft/view';
import { testCatalog } from './catalog';
import { craftOf } from './findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
export const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
export function profile(name: string): Profile {
  const board = testCatalog.board(name);
  const found = board === undefined ? null : profileOf(board);
  assert.ok(found, `${name} has no text half`);
  return found;
}

export const onBoard = (text: string, name: string) => text.replace(/profile( *)= \w+/, `profile$1= ${name}`);
export const viewOf = (text: string, pack: string | null) => new CraftView(craftOf(text, club), pack);
export const written = (name: string, text: string, pack: string | null) =>
  writtenBy(name, viewOf(text, pack));
export const writtenBy = (name: string, view: CraftView) =>
  writeText({
    profile: profile(name),
    entries: entriesOf(profile(name), view),
    captured: null,
    since: null,
    cautions: ['Propellers off.'],
  });
export const listingOf = (name: string, capture: string) => readListing(capture, profile(name).text.forms);
