import { strict as assert } from 'node:assert';
import { profileOf } from '../../../server/src/board/profile/profile';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { CraftView } from '../../../server/src/craft/view';
import { Workspace } from '../../../server/src/workspace/workspace';
import { workspaceWithBoard } from '../../support/additions';
import { MemoryFiles } from '../../support/memory-files';

const uri = 'test:///work/skua.craft';
const profile = {
  name: 'marl',
  text: { forms: { container: 'lines', lines: [{ form: '{name} := {value}' }] } },
  settings: [{ name: 'full cell', means: 'pack.<name>.full-cell', counts: { scale: 1000 } }],
};

/** A script that includes the text of a board, which knows one pack and not its name. */
async function opened(script: string) {
  const { catalog } = workspaceWithBoard('boards/marl.json', profile);
  const fileSystem = new MemoryFiles({ 'marl.boardtext': 'full cell := 4150\n' });
  const workspace = new Workspace({ catalog, fileSystem });
  workspace.openScript(uri, `include "marl.boardtext"\n${script}`, 1);
  await workspace.settled();
  const { craft } = workspace.get(uri) ?? assert.fail('not open');
  return { craft, findings: workspace.findings(uri).map(({ check }) => check.id) };
}

describe('what a board’s text says of its pack', () => {
  it('is that of a pack of its own where the craft names none', async () => {
    const { craft } = await opened('[craft]\nname = "Skua"\n');
    assert.deepEqual(craft.packs(), ['captured']);
  });

  it('makes no further pack of a craft that names its own, and is handed over as it stands', async () => {
    const { craft, findings } = await opened('[craft]\nname = "Skua"\n[pack.long]\ncells = 6\n');
    assert.deepEqual(craft.packs(), ['long']);
    assert.ok(!findings.includes('power/cells-missing'), findings.join());
    const made = (pack: string) =>
      entriesOf(profileOf(craft.board() ?? assert.fail('no board')), new CraftView(craft, pack));
    assert.deepEqual(
      made('long').entries.map(({ name, value, path }) => [name, value, path]),
      [['full cell', '4150', 'pack.captured.full-cell']],
    );
  });

  it('gives way to what the craft says of the pack in view', async () => {
    const { craft } = await opened('[pack.long]\ncells = 6\nfull-cell = 4.1 V\n');
    const { entries } = entriesOf(profileOf(craft.board() ?? assert.fail()), new CraftView(craft, 'long'));
    assert.deepEqual(
      entries.map(({ value }) => value),
      ['4100'],
    );
  });
});
