import assert from 'node:assert/strict';
import type { Snapshot } from '../../server/src/features/snapshot';
import { testCatalog } from './catalog';
import { findingsIn, findingsOf, summaryOf } from './findings';
import { mendedIn } from './mended';
import { retype } from './retyped';
import { snapshotOf } from './snapshot';

/**
 * A check, the text under its mark, the lines of the smallest script that it tells about, and those of the
 * nearest one that it lets pass.
 */
export type CheckCase = readonly [
  id: string,
  marked: string,
  faulty: readonly string[],
  sound: readonly string[],
];

/** The cases of a group of checks, and the checks of the group that have theirs elsewhere. */
export interface GroupCases {
  readonly group: string;
  readonly cases: readonly CheckCase[];
  readonly elsewhere: readonly string[];
}

/** Holds every case, and that every check of the group has one here or elsewhere. */
export function holdChecks({ group, cases, elsewhere }: GroupCases): void {
  describe(`checks: ${group}`, () => {
    for (const [id, marked, faulty, sound] of cases) {
      it(`${id} tells about: ${faulty.at(-1)}`, () => holdFaulty(id, marked, faulty));
      it(`${id} is gone after each of its fixes: ${faulty.at(-1)}`, () => holdMended(id, faulty));
      it(`${id} lets pass: ${sound.at(-1)}`, () => holdSound(id, sound));
    }

    it('each have a case', () => {
      const held = new Set([...cases.map(([id]) => id), ...elsewhere]);
      const ids = [...testCatalog.checks.keys()].filter((id) => id.startsWith(`${group}/`));
      assert.deepEqual(
        ids.filter((id) => !held.has(id)),
        [],
      );
    });
  });
}

/** Holds that each faulty script is told about, once and at its place, and that the sound one is let pass. */
export function holdCases(cases: readonly CheckCase[]): void {
  for (const [id, marked, faulty, sound] of cases) {
    it(`${id} tells about: ${faulty.at(-1)}`, () => holdFaulty(id, marked, faulty));
    it(`${id} lets pass: ${sound.at(-1)}`, () => holdSound(id, sound));
  }
}

/** The one that was checked last: what is told of it and what mends it are held one after the other. */
let last: { readonly text: string; readonly snapshot: Snapshot } | null = null;

function checkedOf(lines: readonly string[]): Snapshot {
  const text = lines.join('\n');
  if (last?.text !== text) last = { text, snapshot: snapshotOf(text).snapshot };
  return last.snapshot;
}

function holdFaulty(id: string, marked: string, faulty: readonly string[]): void {
  const all = findingsOf(checkedOf(faulty).craft).map(summaryOf);
  const told = all.filter((finding) => finding.id === id);
  const [first] = told;
  assert.ok(first !== undefined, `found: ${all.map((finding) => finding.id).join(', ')}`);
  assert.deepEqual(
    told.map((finding) => finding.marked),
    [marked],
  );
  const sentences = `${first.message} ${first.advice}`;
  assert.doesNotMatch(sentences, /[{}]|\[\[|undefined|unknown|NaN/, sentences);
}

/** A fix leads away from what it was offered for, at the place where it was told. */
function holdMended(id: string, faulty: readonly string[]): void {
  const snapshot = checkedOf(faulty);
  // From here on it says something else.
  last = null;
  const count = () => findingsOf(snapshot.craft).filter(({ check }) => check.id === id).length;
  const before = count();
  for (const better of mendedIn(snapshot, id)) {
    retype(snapshot.craft, better);
    assert.ok(count() < before, better);
  }
}

function holdSound(id: string, sound: readonly string[]): void {
  const found = findingsIn(sound.join('\n'));
  const misspelt = (finding: { readonly id: string }) => finding.id.startsWith('line/unknown');
  assert.deepEqual(
    found.filter((finding) => finding.id === id || misspelt(finding)),
    [],
  );
}
