import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { parse } from 'jsonc-parser';
import { adviceFor, messageFor } from '../../../server/src/additions/problem';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { profileOf } from '../../../server/src/board/profile/profile';
import { prove } from '../../../server/src/board/proving/prove';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { Checker } from '../../../server/src/checks/checker';
import { messageOf } from '../../../server/src/checks/report/render';
import { Craft } from '../../../server/src/craft/craft';
import { Script } from '../../../server/src/craft/script';
import { CraftView } from '../../../server/src/craft/view';
import { additionsOf, type ReadFiles, workspaceWithBoard } from '../../support/additions';
import { buzzer, sodiumIon } from '../../support/buzzer';
import { writtenFor } from '../inputs/board-texts';
import { changedJson } from '../inputs/json';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

const demo = join(__dirname, '../../demo');
const finch: unknown = parse(readFileSync(join(demo, 'boards/finch.jsonc'), 'utf8'));
const [tune] = buzzer.parameters;

const additionFiles: readonly unknown[] = [
  buzzer,
  {
    parameters: [
      { ...tune, name: 'buzzer.a' },
      { ...tune, name: 'buzzer.b', related: ['buzzer.a'] },
    ],
  },
  {
    replaces: ['gyro.rate'],
    parameters: [{ ...tune, name: 'gyro.rate', related: [] }],
    choices: [{ parameter: 'craft.purpose', name: 'survey', summary: 'Looks at fields from above.' }],
    links: [],
    regions: [],
    words: [],
  },
  {
    chemistries: [sodiumIon],
  },
];

const script = `[buzzer]\ntune = 3.5 kHz\na = 9 kHz\n[craft]\nname = "Tern"\npurpose = survey\n[gyro]\nrate = 4 kHz
[pack.one]\ncells = 4\nchemistry = sodium-ion\n[motor]\nidle = 6 %\n[gyro.filter.1]\nkind = butterworth\ncutoff = 120 Hz\n[switch.arm]\nchannel = 5
on = 1750..2050 us\n[stick.roll]\ncurve = 0 % -> 0 deg/s, 100 % -> 670 deg/s\n[board]\nprofile = finch\n`;

/** What is said of a file lies in it, in whole sentences. */
function saysWhere(additions: ReadFiles, file: string): void {
  const text = additions.textOf(file) ?? '';
  for (const problem of additions.problems.get(file) ?? []) {
    const { start, end } = problem;
    assert.ok(
      start >= 0 && start <= end && end <= text.length,
      `${problem.id} ${start}..${end} of ${text.length}`,
    );
    assert.match(messageFor(problem), /\S/);
    assert.match(adviceFor(problem), /\S/);
    assert.doesNotMatch(messageFor(problem), /undefined|\[object/);
  }
}

/** A script is checked under what the files make of the catalogue. */
function isUsable({ catalog }: ReadFiles): CraftView {
  const root = new Script('test:///work/main.craft', script, catalog);
  const craft = new Craft(root, catalog, { open: () => ({ kind: 'missing' }) });
  const checker = new Checker(catalog, (id, error) => {
    throw new Error(`rule ${id} failed`, { cause: error });
  });
  for (const finding of checker.findings(craft)) assert.doesNotMatch(messageOf(finding), /undefined|NaN/);
  return new CraftView(craft, 'one');
}

const asText = (values: fc.Arbitrary<unknown>) => values.map((value) => JSON.stringify(value, null, 1) ?? '');

/** Files with which a workspace adds to the catalogue. */
export const additions = target<readonly string[]>(
  {
    name: 'additions',
    share: 1,
    holds: 'whatever a file says, its faults are told in it and the rest is in use',
  },
  fc.array(
    fc.oneof(
      { weight: 6, arbitrary: asText(changedJson(additionFiles)) },
      { weight: 2, arbitrary: slipped(asText(fc.constantFrom(...additionFiles))) },
      { weight: 1, arbitrary: anyText },
    ),
    { minLength: 1, maxLength: 2 },
  ),
  (texts) => {
    const names = texts.map((_, index) => `${index}.json`);
    const made = additionsOf(Object.fromEntries(texts.map((text, index) => [`${index}.json`, text])));
    for (const name of names) saysWhere(made, name);
    isUsable(made);
    for (const name of names) made.update(new Map([[name, null]]));
    assert.equal(made.problems.size, 0);
  },
);

/** Profiles of boards that nobody has seen before. */
export const profiles = target<string>(
  {
    name: 'profiles',
    share: 1,
    holds: 'a profile has faults, told in it, or what it writes proves equal when read back',
  },
  fc.oneof(
    { weight: 6, arbitrary: asText(changedJson([finch])) },
    { weight: 1, arbitrary: slipped(asText(fc.constant(finch))) },
  ),
  (text) => {
    const file = 'boards/finch.json';
    const made = workspaceWithBoard(file, text);
    saysWhere(made, file);
    const view = isUsable(made);
    const board = made.catalog.board('finch');
    const profile = board === undefined ? null : profileOf(board);
    if (profile === null) return;
    const written = writtenFor(profile, view);
    if (written.unwritten.length > 0) return;
    const capture = readListing(written.text, profile.text.forms);
    const entries = entriesOf(profile, view);
    const { rows } = prove({
      profile,
      entries,
      captured: null,
      capture,
      except: new Set(),
      ignoresExtra: false,
    });
    assert.deepEqual(
      rows.filter(({ verdict }) => verdict !== 'equal'),
      [],
      written.text,
    );
  },
);
