import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { AdditionFiles } from '../../../server/src/workspace/addition-files';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testBundle } from '../../support/catalog';
import { summaryOf } from '../../support/findings';
import { MemoryFiles } from '../../support/memory-files';

const work = 'test:///work';
const main = `${work}/main.craft`;

function profile(name: string, hardware: object = { motorOutputs: 2 }): string {
  return JSON.stringify({ name, hardware });
}

/** A workspace with these files, as a client or the command line has it. */
async function opened(files: Readonly<Record<string, string | Error>>, roots: readonly string[] = [work]) {
  const fileSystem = new MemoryFiles(files);
  const additions = new AdditionFiles(testBundle, fileSystem);
  await additions.setRoots(roots);
  const workspace = new Workspace({ catalog: additions.catalog, fileSystem });
  additions.onAsked = () => {
    void additions.readAsked().then(() => workspace.useCatalog(additions.catalog));
  };
  /** Brings in what has changed, as a client does. */
  const takeIn = async (change: Promise<boolean>) => {
    if (await change) workspace.useCatalog(additions.catalog);
    await workspace.settled();
  };
  /** What is found in a script that names a board. */
  const onBoard = async (name: string, text = 'layout = quad-x') => {
    workspace.openScript(main, `board.profile = ${name}\n[craft]\n${text}\n`, 0);
    await workspace.settled();
    return found();
  };
  const found = () => workspace.findings(main).map(summaryOf);
  const problems = () =>
    [...additions.problems].flatMap(([file, all]) =>
      all.map(({ message }) => `${file.slice(work.length + 1)}: ${message}`),
    );
  return { fileSystem, additions, workspace, takeIn, onBoard, found, problems };
}

/** Which profiles were read, in order. */
function boardsRead({ read }: { readonly read: readonly string[] }): readonly string[] {
  return read.filter((file) => file.includes('/boards/'));
}

const ids = (findings: readonly { readonly id: string }[]) => findings.map(({ id }) => id);

describe('a folder with a thousand boards', () => {
  const names = Array.from({ length: 1000 }, (_, index) => `board-${String(index).padStart(3, '0')}`);
  const files = Object.fromEntries(names.map((name) => [`boards/${name}.json`, profile(name)]));

  it('is listed, and no file of it is read', async () => {
    const { fileSystem, additions, workspace } = await opened(files);
    workspace.openScript(main, '[craft]\nname = "Dabchick"\n', 0);
    await workspace.settled();
    assert.ok(workspace.findings(main).length > 0);
    assert.deepEqual(boardsRead(fileSystem), []);
    assert.ok(additions.catalog.boardNames().includes('board-999'));
  });

  it('has the one read that a script names', async () => {
    const { fileSystem, onBoard } = await opened(files);
    assert.ok(ids(await onBoard('board-123')).includes('wire/too-few-motor-outputs'));
    assert.deepEqual(boardsRead(fileSystem), [`${work}/boards/board-123.json`]);
  });

  it('has the few read again that were, when something in it changes', async () => {
    const { fileSystem, additions, takeIn, onBoard, found } = await opened(files);
    await onBoard('board-123');
    fileSystem.read.length = 0;
    fileSystem.files.set(`${work}/boards/board-123.json`, profile('board-123', { motorOutputs: 4 }));
    await takeIn(additions.diskChanged(`${work}/boards/board-123.json`));
    assert.deepEqual(boardsRead(fileSystem), [`${work}/boards/board-123.json`]);
    assert.ok(!ids(found()).includes('wire/too-few-motor-outputs'));
  });
});

describe('a board of the workspace', () => {
  it('is none that a script names wrongly: what there is is said', async () => {
    const { onBoard } = await opened({ 'boards/dipper.json': profile('dipper') });
    const wrong = (await onBoard('dippre')).find(({ id }) => id === 'line/unknown-word');
    assert.ok(wrong);
    assert.deepEqual(wrong.fixes, ['Write dipper']);
  });

  it('may be written with comments, in a file of its name', async () => {
    const finch = readFileSync('test/demo/boards/finch.jsonc', 'utf8');
    const { onBoard, problems } = await opened({ 'boards/finch.jsonc': finch });
    assert.ok(!ids(await onBoard('finch')).includes('line/unknown-word'));
    assert.deepEqual(problems(), []);
  });

  it('is not one that is built in: that is told at the file, and the built-in one stays', async () => {
    const { fileSystem, onBoard, problems } = await opened({ 'boards/wren.json': profile('wren') });
    assert.deepEqual(problems(), ['boards/wren.json: the board wren is built in: give yours another name']);
    assert.ok(!ids(await onBoard('wren')).includes('wire/too-few-motor-outputs'));
    assert.deepEqual(boardsRead(fileSystem), []);
  });

  it('is the first of two with its name: that is told at the other', async () => {
    const files = {
      'boards/dipper.json': profile('dipper'),
      'boards/dipper.jsonc': profile('dipper', { motorOutputs: 8 }),
    };
    const { onBoard, problems } = await opened(files);
    assert.deepEqual(problems(), [
      'boards/dipper.jsonc: the board dipper is in boards/dipper.json already: give yours another name',
    ]);
    assert.ok(ids(await onBoard('dipper')).includes('wire/too-few-motor-outputs'));
  });

  it('is called as its file is', async () => {
    const { onBoard, problems } = await opened({
      'boards/dipper.json': profile('gull'),
      'boards/My Board.json': profile('dipper'),
    });
    assert.deepEqual(problems(), [
      'boards/My%20Board.json: a board is called as its file is, and "My Board" is no name: small letters, with hyphens between words',
    ]);
    assert.ok(ids(await onBoard('dipper')).includes('wire/board-faulty'));
    assert.ok(
      problems().includes('boards/dipper.json: a board is called as its file is: dipper, and not gull'),
    );
  });

  it('that has a fault is not used: its file says what, and the script that checks wait', async () => {
    const { onBoard, problems } = await opened({
      'boards/dipper.json': profile('dipper', { motorOutputs: 'four' }),
    });
    const found = await onBoard('dipper');
    const [note, ...more] = found.filter(({ id }) => id.startsWith('wire/board-'));
    assert.deepEqual(more, []);
    assert.equal(note?.id, 'wire/board-faulty');
    assert.match(
      note?.message ?? '',
      /^The profile of dipper has a fault, so nobody knows its .* checks wait for that\.$/,
    );
    assert.ok(!ids(found).includes('line/unknown-word'));
    assert.deepEqual(problems(), ['boards/dipper.json: a number was expected for motorOutputs']);
  });

  it('that can’t be read is told so, and so is one that has gone meanwhile', async () => {
    const { fileSystem, onBoard, problems } = await opened({
      'boards/dipper.json': new Error('it is locked'),
      'boards/gull.json': profile('gull'),
    });
    assert.ok(ids(await onBoard('dipper')).includes('wire/board-faulty'));
    fileSystem.files.delete(`${work}/boards/gull.json`);
    assert.ok(ids(await onBoard('gull')).includes('wire/board-faulty'));
    assert.deepEqual(problems(), [
      'boards/dipper.json: it is locked',
      'boards/gull.json: it is there no more',
    ]);
  });

  it('is what an editor shows of it, and what it last was without a fault', async () => {
    const { additions, takeIn, onBoard, found, problems } = await opened({
      'boards/dipper.json': profile('dipper'),
    });
    const file = `${work}/boards/dipper.json`;
    assert.ok(ids(await onBoard('dipper')).includes('wire/too-few-motor-outputs'));
    await takeIn(additions.opened(file, profile('dipper', { motorOutputs: 4 })));
    assert.ok(!ids(found()).includes('wire/too-few-motor-outputs'));
    await takeIn(additions.opened(file, '{ "name": '));
    assert.ok(!ids(found()).includes('wire/too-few-motor-outputs'));
    assert.deepEqual(problems(), ['boards/dipper.json: a value was expected']);
    await takeIn(additions.closed(file));
    assert.ok(ids(found()).includes('wire/too-few-motor-outputs'));
    assert.deepEqual(problems(), []);
  });

  it('comes and goes with its file', async () => {
    const { fileSystem, additions, takeIn, onBoard, found } = await opened({});
    assert.ok(ids(await onBoard('dipper')).includes('line/unknown-word'));
    const file = `${work}/boards/dipper.json`;
    fileSystem.files.set(file, profile('dipper'));
    await takeIn(additions.diskChanged(file));
    assert.ok(ids(found()).includes('wire/too-few-motor-outputs'));
    fileSystem.files.delete(file);
    await takeIn(additions.diskChanged(file));
    assert.ok(ids(found()).includes('line/unknown-word'));
  });
});
