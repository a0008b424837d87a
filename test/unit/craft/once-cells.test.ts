import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { OnceCells } from '../../../server/src/craft/once-cells';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { craftScript } from '../../support/craft-scripts';
import { MemoryHost } from '../../support/memory-host';
import { toldCraft, toldWhole } from '../../support/told-craft';

const numRuns = Number(process.env.PROPSOFF_RUNS ?? 500);

describe('answers for one look', () => {
  it('are computed once', () => {
    const cells = new OnceCells();
    let times = 0;
    const ask = () => cells.get('a', () => (times += 1));
    assert.deepEqual([ask(), ask()], [1, 1]);
  });

  it('serve every pack where none of what they are made of asked which it is', () => {
    const cells = new OnceCells();
    const computed: string[] = [];
    const inner = (pack: string) =>
      cells.getWith(pack, 'inner', 'x', () => {
        computed.push(`inner ${pack}`);
        return 1;
      });
    const outer = (pack: string) => cells.getWith(pack, 'outer', 'x', () => inner(pack) + 1);
    assert.deepEqual([outer('one'), outer('two')], [2, 2]);
    assert.deepEqual(computed, ['inner one']);
  });

  it('are each pack’s own where something that they are made of asked, also when that was known already', () => {
    const cells = new OnceCells();
    const inner = (pack: string) =>
      cells.getWith(pack, 'inner', 'x', () => {
        cells.readPack();
        return `of ${pack}`;
      });
    const between = (pack: string) => cells.get(`between ${pack}`, () => inner(pack));
    const outer = (pack: string) => cells.getWith(pack, 'outer', 'x', () => between(pack));
    assert.equal(between('one'), 'of one');
    assert.deepEqual([outer('one'), outer('two')], ['of one', 'of two']);
  });

  it('depend on a pack only through what they ask themselves', () => {
    const cells = new OnceCells();
    cells.getWith('one', 'kind', 'asks', () => cells.readPack());
    const other = (pack: string) => cells.getWith(pack, 'kind', 'other', () => pack);
    assert.deepEqual([other('one'), other('two')], ['one', 'one']);
  });

  it('that ask for themselves throw, and can be asked for again', () => {
    const cells = new OnceCells();
    const round = (): number => cells.getWith('one', 'kind', 'round', () => round() + 1);
    assert.throws(round, /round depends on itself/);
    const circle = (): number => cells.get('circle', () => circle() + 1);
    assert.throws(circle, /circle depends on itself/);
    assert.equal(
      cells.get('circle', () => 3),
      3,
    );
  });

  it('are all dropped by a change', () => {
    const cells = new OnceCells();
    let value = 1;
    const ask = () => [cells.get('a', () => value), cells.getWith(null, 'kind', 'a', () => value)];
    assert.equal(cells.changed().size, 0);
    assert.deepEqual(ask(), [1, 1]);
    value = 2;
    assert.deepEqual(ask(), [1, 1]);
    assert.deepEqual([...cells.changed()], ['a', 'kind']);
    assert.deepEqual(ask(), [2, 2]);
  });
});

/** What everybody can see of a script that is opened anew. */
async function seen(texts: Readonly<Record<string, string>>, isForOneLook: boolean): Promise<unknown> {
  const onFault = (id: string, error: unknown) => {
    throw new Error(`${id} failed`, { cause: error });
  };
  const host = new MemoryHost(texts);
  const workspace = new Workspace({ catalog: testCatalog, host, onFault, isForOneLook });
  const uri = 'test:///work/main.craft';
  const { craft } = workspace.openScript(uri, texts['main.craft'] ?? '', 1);
  await workspace.settled();
  return { findings: workspace.findings(uri).map(toldWhole), craft: toldCraft(craft) };
}

/** Packs, with a few of their own settings, so that many of the scripts below tell packs apart. */
const packs = '[pack.sprint]\n[pack.cruise]\ncells = 4\nchemistry = lipo\n';

describe('a script that is looked at once', () => {
  it('shows what it shows to somebody who follows its changes', async function () {
    this.timeout(numRuns * 1000);
    await fc.assert(
      fc.asyncProperty(craftScript, craftScript, craftScript, async (main, one, two) => {
        const texts = { 'main.craft': packs + main, 'one.craft': one, 'two.craft': two };
        assert.deepEqual(await seen(texts, true), await seen(texts, false));
      }),
      { numRuns },
    );
  });

  it('also where an included script has the very lines of the one that includes it', async () => {
    const line = 'let base = quiet * 10';
    const texts = { 'main.craft': `${packs}include "one.craft"\n${line}`, 'one.craft': line };
    assert.deepEqual(await seen(texts, true), await seen(texts, false));
  });

  it('also where packs differ by an overlay, by what an overlay changes elsewhere, and by a misspelt line in one', async () => {
    const read = (name: string) =>
      readFileSync(join(__dirname, '../../demo', name), 'utf8').replace(/^include .*$/m, '');
    const overlays = [
      '[control @ sprint]\nrate = 500 Hz',
      'let base = 1 kHz\n[gyro.lowpass]\ncutoff = motor.idle * base\n[motor @ sprint]\nidle = 14 %',
      '[arming @ sprint]\ntilt-limti = 90 deg',
      '[motor @ sprint]\nidel = 14 %',
    ];
    for (const name of ['bittern.craft', 'sandmartin.craft', 'wagtail.craft']) {
      for (const overlay of overlays) {
        const texts = { 'main.craft': `${read(name)}\n[pack.sprint]\n${overlay}\n` };
        assert.deepEqual(await seen(texts, true), await seen(texts, false));
      }
    }
  });
});
