import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { type Profile, profileOf } from '../../../server/src/board/profile/profile';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { type WrittenText, writeText } from '../../../server/src/board/writing/write-text';
import { CraftView } from '../../../server/src/craft/view';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { listings } from '../../support/listings';
import { anyText, slipped } from './texts';

const demo = join(__dirname, '../../demo');
const club = { 'club-habits.craft': readFileSync(join(demo, 'club-habits.craft'), 'utf8') };
const racer = readFileSync(join(demo, 'sandmartin.craft'), 'utf8');

export const boardNames = ['wren', 'heron'] as const;
export type BoardName = (typeof boardNames)[number];

export function profileNamed(name: BoardName): Profile {
  const board = testCatalog.board(name);
  const profile = board === undefined ? null : profileOf(board);
  if (profile === null) throw new Error(`${name} has no text half`);
  return profile;
}

/** The racer of the demo on a board. */
function racerText(profile: Profile): string {
  return writtenFor(profile, racerView(), ['Propellers off.']).text;
}

/** A craft as its board's profile alone says how to write it. */
export function writtenFor(profile: Profile, view: CraftView, cautions: readonly string[] = []): WrittenText {
  const entries = entriesOf(profile, view);
  return writeText({ profile, entries, captured: null, since: null, cautions });
}

export function racerView(): CraftView {
  return new CraftView(craftOf(racer, club), 'sprint');
}

const written = boardNames.map((name) => racerText(profileNamed(name)));
const unknown = [...listings(12, false), ...listings(12, true)].map(({ text }) => text);

/** Texts of boards that are known and of others, whole and with slips. */
export const capture: fc.Arbitrary<string> = fc.oneof(
  { weight: 2, arbitrary: slipped(fc.constantFrom(...written)) },
  { weight: 2, arbitrary: slipped(fc.constantFrom(...unknown)) },
  {
    weight: 2,
    arbitrary: fc
      .array(fc.constantFrom(...[...written, ...unknown].flatMap((text) => text.split('\n'))), {
        maxLength: 30,
      })
      .map((lines) => lines.join('\n')),
  },
  { weight: 1, arbitrary: anyText },
);
