import { strict as assert } from 'node:assert';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const main = 'test:///work/main.craft';
const other = 'test:///work/other.craft';
const faulty = 'wobble = 1\n';

/** Files that may take their time, refuse, go and come back. */
class MoodyFiles extends MemoryFiles {
  private waiting: (() => void)[] = [];
  isSlow = false;

  override async readText(uri: string): Promise<string | null> {
    if (this.isSlow) await new Promise<void>((resolve) => this.waiting.push(resolve));
    return super.readText(uri);
  }

  /** All that was asked for is answered, and what is asked for from now on at once. */
  wake(): void {
    this.isSlow = false;
    for (const go of this.waiting.splice(0)) go();
  }
}

function workspaceOver(fileSystem: MemoryFiles, faults: string[] = []): Workspace {
  return new Workspace({ catalog: testCatalog, fileSystem, onFault: (id) => void faults.push(id) });
}

const foundIn = (workspace: Workspace, uri: string) => workspace.findings(uri).map(({ check }) => check.id);

describe('a rule that fails', () => {
  it('is told once and left out; every other one still answers', () => {
    const faults: string[] = [];
    const workspace = workspaceOver(new MemoryFiles(), faults);
    const { craft } = workspace.openScript(
      main,
      `${faulty}[arming]\ntilt-limit = 180 deg\n[stick.roll]\nshape = 3\n`,
      1,
    );
    const whole = foundIn(workspace, main);
    assert.ok(whole.includes('safe/arms-at-any-tilt') && faults.length === 0, whole.join());
    const setting = craft.setting.bind(craft);
    craft.setting = (path, pack) => {
      if (path === 'arming.tilt-limit') throw new Error('a fault of our own');
      return setting(path, pack);
    };
    workspace.change(
      main,
      [{ start: { line: 2, character: 13 }, end: { line: 2, character: 16 }, text: '179' }],
      2,
    );
    const left = foundIn(workspace, main);
    assert.ok(left.includes('line/unknown-name'), left.join());
    assert.ok(!left.includes('safe/arms-at-any-tilt'));
    assert.ok(faults.length > 0);
    assert.deepEqual(
      left,
      whole.filter((id) => left.includes(id)),
    );
    assert.ok(left.length >= whole.length - faults.length, `${left.length} of ${whole.length}, ${faults}`);
  });
});

describe('a file system that is slow, refuses, loses files and comes back', () => {
  it('holds up nothing but what it is asked for, and each state is told once', async () => {
    const fileSystem = new MoodyFiles({ 'base.craft': 'let quiet = 90 ms\n' });
    const workspace = workspaceOver(fileSystem);
    fileSystem.isSlow = true;
    workspace.openScript(main, `include "base.craft"\n${faulty}[gyro.filter.1]\ncutoff = quiet\n`, 1);
    workspace.openScript(other, faulty, 1);
    assert.deepEqual(foundIn(workspace, main), ['line/unknown-name'], 'while it is slow');
    assert.ok(foundIn(workspace, other).includes('line/unknown-name'));
    fileSystem.wake();
    await workspace.settled();
    assert.deepEqual(foundIn(workspace, main).sort(), ['line/unknown-name', 'line/wrong-dimension']);

    const changed = async (text: string | Error | null) => {
      if (text === null) fileSystem.files.delete('test:///work/base.craft');
      else fileSystem.files.set('test:///work/base.craft', text);
      workspace.diskChanged('test:///work/base.craft');
      await workspace.settled();
      return foundIn(workspace, main).filter((id) => id !== 'line/unknown-name');
    };
    assert.deepEqual(await changed(new Error('the disk is away')), ['line/include-refused']);
    assert.match(
      workspace
        .findings(main)
        .map(({ values }) => JSON.stringify(values))
        .join(),
      /the disk is away/,
    );
    assert.deepEqual(await changed(null), ['line/include-missing']);
    assert.deepEqual(await changed('let quiet = 90 Hz\n'), []);
  });

  it('drops an answer that comes when the file is another one', async () => {
    const fileSystem = new MoodyFiles({ 'base.craft': 'let quiet = 90 ms\n' });
    const workspace = workspaceOver(fileSystem);
    fileSystem.isSlow = true;
    workspace.openScript(main, 'include "base.craft"\n[gyro.filter.1]\ncutoff = quiet\n', 1);
    workspace.findings(main);
    fileSystem.files.set('test:///work/base.craft', 'let quiet = 90 Hz\n');
    workspace.diskChanged('test:///work/base.craft');
    fileSystem.wake();
    await workspace.settled();
    assert.deepEqual(foundIn(workspace, main), []);
  });

  it('keeps waiting whoever wants all that a script includes: until it is read, by whatever way, or nobody has it open', async () => {
    const fileSystem = new MoodyFiles({ 'base.craft': 'include "deep.craft"\n', 'deep.craft': '# deep\n' });
    const workspace = workspaceOver(fileSystem);
    fileSystem.isSlow = true;
    workspace.openScript(main, 'include "base.craft"\n', 1);
    workspace.openScript(other, 'include "base.craft"\n', 1);
    const done: string[] = [];
    const waits = [main, other].map(async (uri) => {
      await workspace.included(uri);
      done.push(uri);
    });
    await new Promise(setImmediate);
    assert.deepEqual(done, []);
    workspace.close(other);
    await waits[1];
    assert.deepEqual(done, [other]);
    workspace.useCatalog(testCatalog);
    await new Promise(setImmediate);
    fileSystem.wake();
    await waits[0];
    assert.equal(workspace.get(main)?.craft.layers().layers.length, 3);
    await workspace.included('test:///work/unknown.craft');
  });
});
