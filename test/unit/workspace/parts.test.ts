import { strict as assert } from 'node:assert';
import type { FoundScripts } from '../../../server/src/workspace/file-system';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const packs = 'test:///work/packs.craft';
const craft = 'test:///work/craft.craft';
const packsText = '[pack.sprint]\ncells = 6\n';
const craftText = 'include "packs.craft"\n[craft]\nname = "Finch"\n';

class SlowFiles extends MemoryFiles {
  private waiting: (() => void)[] = [];

  override async scriptsBelow(): Promise<FoundScripts> {
    await new Promise<void>((resolve) => this.waiting.push(resolve));
    return super.scriptsBelow();
  }

  get isAsked(): boolean {
    return this.waiting.length > 0;
  }

  wake(): void {
    for (const go of this.waiting.splice(0)) go();
  }
}

function over(files: Readonly<Record<string, string | Error>>, fileSystem = new MemoryFiles(files)) {
  const affected: string[] = [];
  const workspace = new Workspace({
    catalog: testCatalog,
    fileSystem,
    onAffected: (uris) => affected.push(...uris),
    onFault: (id, error) => {
      throw new Error(`${id} failed`, { cause: error });
    },
  });
  const readAs = async (uri = packs) => {
    await workspace.settled();
    return workspace.get(uri)?.craft.readAs();
  };
  const ids = () => workspace.findings(packs).map(({ check }) => check.id);
  return { workspace, fileSystem, affected, readAs, ids };
}

describe('a script with packs and without [craft]', () => {
  it('is a whole craft, says so, and is held to all that a craft needs', async () => {
    const { workspace, readAs, ids } = over({ 'packs.craft': packsText });
    workspace.openScript(packs, packsText, 1);
    assert.equal(await readAs(), 'whole');
    assert.ok(ids().includes('safe/craft-unsaid') && ids().includes('safe/no-arm-switch'), ids().join());
  });

  it('is a part as long as an open script includes it', async () => {
    const { workspace, affected, readAs, ids } = over({});
    workspace.openScript(packs, packsText, 1);
    assert.equal(await readAs(), 'whole');
    workspace.findings(packs);
    workspace.openScript(craft, craftText, 1);
    assert.equal(await readAs(), 'part');
    assert.deepEqual(ids(), []);
    assert.ok(affected.includes(packs));
    const first = { start: { line: 0, character: 0 }, end: { line: 1, character: 0 } };
    workspace.change(craft, [{ ...first, text: '' }], 2);
    assert.equal(await readAs(), 'whole');
    workspace.change(craft, [{ start: first.start, end: first.start, text: 'include "./packs.craft"\n' }], 3);
    assert.equal(await readAs(), 'part');
    workspace.close(craft);
    assert.equal(await readAs(), 'whole');
  });

  it('is a part where a script on the disk includes it, in whatever folder', async () => {
    const { workspace, readAs } = over({ 'racers/craft.craft': 'include "../packs.craft" # all of them\n' });
    workspace.openScript(packs, packsText, 1);
    assert.equal(await readAs(), 'part');
  });

  it('is a part where what includes it is included itself', async () => {
    const { workspace, readAs } = over({ 'habits.craft': 'include "packs.craft"\n' });
    workspace.openScript(packs, packsText, 1);
    workspace.openScript(craft, 'include "habits.craft"\n[craft]\n', 1);
    assert.equal(await readAs(), 'part');
  });

  it('is none for a script that only speaks of an include, can’t be read, or is the script itself', async () => {
    const { workspace, readAs } = over({
      'one.craft': '# include "packs.craft"\nincludes "packs.craft"\n',
      'two.craft': 'include "../packs.craft"\n',
      'three.craft': new Error('it may not be read'),
      'packs.craft': `include "packs.craft"\n${packsText}`,
    });
    workspace.openScript(packs, packsText, 1);
    assert.equal(await readAs(), 'whole');
  });

  it('follows the disk', async () => {
    const { workspace, fileSystem, readAs } = over({ 'craft.craft': craftText });
    workspace.openScript(packs, packsText, 1);
    assert.equal(await readAs(), 'part');
    fileSystem.files.delete(craft);
    workspace.diskChanged(craft);
    assert.equal(await readAs(), 'whole');
    fileSystem.files.set(craft, craftText);
    workspace.diskChanged(craft);
    assert.equal(await readAs(), 'part');
    fileSystem.files.clear();
    workspace.rootsChanged([]);
    assert.equal(await readAs(), 'whole');
  });

  it('counts an open text more than the one on the disk', async () => {
    const { workspace, readAs } = over({ 'craft.craft': craftText });
    workspace.openScript(packs, packsText, 1);
    workspace.openScript(craft, '[craft]\n', 1);
    assert.equal(await readAs(), 'whole');
    workspace.close(craft);
    assert.equal(await readAs(), 'part');
  });

  it('is told nothing wrong while it is not known yet', async () => {
    const { workspace, fileSystem, affected, readAs, ids } = over({}, new SlowFiles({}));
    assert.ok(fileSystem instanceof SlowFiles);
    workspace.openScript(packs, packsText, 1);
    assert.deepEqual(ids(), []);
    assert.ok(fileSystem.isAsked);
    fileSystem.wake();
    assert.equal(await readAs(), 'whole');
    assert.deepEqual(affected, [packs]);
    assert.ok(ids().includes('safe/craft-unsaid'));
  });

  it('takes no answer that is older than the last change on the disk', async () => {
    const { workspace, fileSystem, readAs } = over({}, new SlowFiles({}));
    assert.ok(fileSystem instanceof SlowFiles);
    workspace.openScript(packs, packsText, 1);
    workspace.findings(packs);
    fileSystem.files.set(craft, craftText);
    workspace.diskChanged(craft);
    workspace.findings(packs);
    fileSystem.wake();
    assert.equal(await readAs(), 'part');
  });
});

describe('a script that is a part', () => {
  it('that speaks of much says so where no script is at hand that includes it, and is calm where one is', async () => {
    const { workspace, readAs, ids } = over({});
    workspace.openScript(packs, 'signal-loss.hold = 350 ms\ngyro.rate = 4 kHz\narming.beep = on\n', 1);
    assert.equal(await readAs(), 'part');
    assert.deepEqual(ids(), ['safe/read-as-part']);
    workspace.openScript(craft, craftText, 1);
    assert.equal(await readAs(), 'part');
    assert.deepEqual(ids(), []);
  });

  it('is a board’s text: what its board has no name for can’t stand in it', async () => {
    const { workspace, readAs, ids } = over({});
    workspace.openBoardText(packs, 'in motors:\nidle share is 6.0;\n', 1, 'heron');
    assert.equal(await readAs(), 'part');
    assert.deepEqual(ids(), []);
    workspace.openScript(packs, 'motor.poles = 14\n', 2);
    assert.equal(await readAs(), 'whole');
  });
});
