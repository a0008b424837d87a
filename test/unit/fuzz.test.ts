import assert from 'node:assert/strict';
import { corpusFolders, corpusOf } from '../fuzz/corpus';
import { targets } from '../fuzz/targets';

/** A taste of what the sweeps go through in thousands. */
const seed = 20_270_309;
const few = 6;
/** Of messages there are many kinds. */
const most: ReadonlyMap<string, number> = new Map([['messages', 25]]);

describe('what others wrote (F03)', () => {
  for (const target of targets) {
    it(`${target.name}: ${target.holds}, with a few inputs`, async () => {
      const find = await target.run(most.get(target.name) ?? few, seed);
      assert.equal(find, null, find === null ? '' : `${find.error}\n${find.input}`);
    });

    for (const { title, input } of corpusOf(target)) {
      it(`${target.name}, once broken by ${title}`, () => target.replay(input));
    }
  }

  it('all that once broke something belongs to a target', () => {
    const names = targets.map(({ name }) => name);
    assert.deepEqual(
      corpusFolders().filter((folder) => !names.includes(folder)),
      [],
    );
  });
});
