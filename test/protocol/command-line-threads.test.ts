import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { propsoff } from '../support/command-line';
import { faults } from '../support/faults';
import { withScratch } from '../support/scratch';

const demo = ['wagtail', 'sandmartin'].map((name) =>
  readFileSync(join(resolve('test/demo'), `${name}.craft`), 'utf8'),
);
const kinds = [...demo, ...faults.map(({ text }) => text)];

/** Enough for several threads, no two alike; one alone has a pack of its own, and one includes what is not there. */
const count = 150;
const numbers = Array.from({ length: count }, (_, index) => index);
const nameOf = (index: number) => `craft-${String(index).padStart(3, '0')}.craft`;
const files = Object.fromEntries([
  ['club-habits.craft', readFileSync(join(resolve('test/demo'), 'club-habits.craft'), 'utf8')],
  ...numbers.map((index) => [nameOf(index), `# number ${index}\n${kinds[index % kinds.length]}`]),
  [nameOf(7), '[craft]\nname = "alone"\n[pack.odd]\ncells = 4\n'],
  [nameOf(8), 'include "nowhere.craft"\n[craft]\nname = "lonely"\n'],
]);

/** So many at once are checked in one thread. */
const fewAtOnce = 30;

interface Report {
  readonly files: readonly unknown[];
}

describe('many scripts at once', () => {
  it('are told as they are a few at a time', () =>
    withScratch(files, async ({ path: cwd }) => {
      const told = (paths: readonly string[]) =>
        (JSON.parse(propsoff(['check', '--json', ...paths], { cwd }).stdout) as Report).files;
      const parts: unknown[] = [];
      for (let at = 0; at < count; at += fewAtOnce)
        parts.push(...told(numbers.slice(at, at + fewAtOnce).map(nameOf)));
      const all = told(numbers.map(nameOf));
      assert.equal(all.length, count);
      assert.deepEqual(all, parts);
    }));

  it('are asked together for a pack: one that has it is enough, and one that none has is refused', () =>
    withScratch(files, async ({ path: cwd }) => {
      const known = propsoff(['check', '.', '--pack', 'odd', '--fail-on', 'never'], { cwd });
      assert.deepEqual([known.status, known.stderr], [0, '']);
      const unknown = propsoff(['check', '.', '--pack', 'nowhere'], { cwd });
      assert.equal(unknown.status, 2);
      assert.match(unknown.stderr, /none of the scripts has a pack "nowhere": they name .*\bodd\b/);
    }));
});
