import { strict as assert } from 'node:assert';
import { glob } from 'tinyglobby';
import { pathsMeant } from '../../../server/src/workspace/path-patterns';
import { withScratch } from '../../support/scratch';

const paths = [
  'a.craft',
  'b.craft',
  'old.craft',
  'old/a.craft',
  'old/deep/b.craft',
  'race/a.craft',
  'race/old/c.craft',
  'race/2024/x-1.craft',
  'race/2025/x-12.craft',
  'a+b (c).craft',
  '[odd]/a.craft',
  '.kept/a.craft',
  'race/.a.craft',
];

const patterns: readonly (readonly string[])[] = [
  ['old/**'],
  ['old'],
  ['old/'],
  ['./old'],
  ['**/old/**'],
  ['**/old'],
  ['*.craft'],
  ['**/*.craft'],
  ['**'],
  ['*'],
  ['race/*'],
  ['race/*/x-?.craft'],
  ['race/202[45]/*'],
  ['race/202[!4]/*'],
  ['{old,race}/a.craft'],
  ['race/{2024,2025}/**'],
  ['race/**/c.craft'],
  ['**/a.craft', '!old/**'],
  ['\\[odd\\]/*'],
  ['.kept/*'],
  ['none'],
];

describe('patterns of paths', () => {
  // The search of the command line is the measure: a workspace's file says the same to both.
  for (const some of patterns)
    it(`mean what the command line finds by ${some.join(' and ')}`, () =>
      withScratch(Object.fromEntries(paths.map((path) => [path, ''])), async (scratch) => {
        const found = await glob([...some], { cwd: scratch.path, followSymbolicLinks: false });
        assert.deepEqual(paths.filter(pathsMeant(some)).sort(), found.sort());
      }));

  it('take no longer for being made to', () => {
    const name = `${'a'.repeat(200)}.craft`;
    assert.equal(pathsMeant([`${'*a'.repeat(200)}b`])(name), false);
    assert.equal(pathsMeant([`${'**/'.repeat(500)}b`])(`${'x/'.repeat(500)}${name}`), false);
    assert.equal(pathsMeant([`${'{a,b}'.repeat(40)}`])(name), false);
  });

  it('mean nothing where a pattern is none', () => {
    assert.deepEqual(paths.filter(pathsMeant(['[z-a]'])), []);
    assert.deepEqual(paths.filter(pathsMeant([])), []);
  });
});
