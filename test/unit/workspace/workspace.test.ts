import { strict as assert } from 'node:assert';
import type { FileSystem } from '../../../server/src/workspace/file-system';
import { isBinary, longestScript, withoutMark } from '../../../server/src/workspace/file-system';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { held } from '../../support/held';
import { MemoryFiles } from '../../support/memory-files';

const main = 'test:///work/main.craft';
const club = 'test:///work/club.craft';
const includes = 'include "club.craft"\n';
const cutoff = (value: string) => `[gyro.filter.1]\ncutoff = ${value}\n`;

/** A workspace over files in memory, with a record of the scripts that it says have changed. */
function workspaceOver(fileSystem: FileSystem) {
  const affected: string[][] = [];
  const faults: unknown[] = [];
  const workspace = new Workspace({
    catalog: testCatalog,
    fileSystem,
    onAffected: (uris) => affected.push([...uris]),
    onFault: (id, error) => faults.push([id, error]),
  });
  const ids = (uri = main) => workspace.findings(uri).map(({ check }) => check.id);
  const value = () => {
    const craft = workspace.get(main)?.craft;
    return craft && held(craft, 'gyro.filter.1.cutoff');
  };
  return { workspace, affected, faults, ids, value };
}

async function opened(text: string, files: Readonly<Record<string, string | Error>> = {}) {
  const fileSystem = new MemoryFiles(files);
  const over = workspaceOver(fileSystem);
  over.workspace.openScript(main, text, 1);
  await over.workspace.settled();
  return { ...over, fileSystem };
}

const whole = (line: number, text: string) => ({
  start: { line, character: 0 },
  end: { line: line + 1, character: 0 },
  text,
});

describe('an open script', () => {
  it('reads a line once that several of its scripts have, as the copies of a craft do', async () => {
    const { workspace } = await opened(cutoff('90 Hz'));
    workspace.openScript(club, `# a copy\n${cutoff('90 Hz')}`, 1);
    const said = (uri: string, line: number) => workspace.get(uri)?.script.document.lineAt(line)?.content;
    assert.ok(said(main, 1));
    assert.equal(said(club, 2), said(main, 1));
    assert.deepEqual([said(main, 1)?.text, said(club, 0)?.text], ['cutoff = 90 Hz', '# a copy']);
  });

  it('is known by its URI, however the client spells it', async () => {
    const { workspace } = workspaceOver(new MemoryFiles());
    workspace.openScript('file:///C%3A/a%20b.craft', '[gyro]\n', 3);
    assert.equal(workspace.get('file:///c:/a b.craft')?.uri, 'file:///C%3A/a%20b.craft');
    assert.equal(workspace.get('file:///c:/a b.craft')?.version, 3);
    assert.equal(workspace.get('file:///c:/other.craft'), undefined);
    assert.equal(workspace.allOpen().length, 1);
  });

  it('has findings that are kept until it changes', async () => {
    const { workspace, ids } = await opened('[gyro]\nwobble = 1\n');
    assert.deepEqual(ids(), ['line/unknown-name']);
    const before = workspace.findings(main);
    const stamp = workspace.stamp(main);
    assert.equal(workspace.findings(main), before);
    workspace.change(main, [whole(1, 'rate = 8 kHz\n')], 2);
    assert.notEqual(workspace.stamp(main), stamp);
    assert.deepEqual(ids(), []);
    assert.equal(workspace.get(main)?.version, 2);
  });

  it('takes several edits one after the other (D01)', async () => {
    const { workspace } = await opened('a = 1\nb = 2\n');
    const at = { line: 0, character: 0 };
    workspace.change(
      main,
      [
        { start: at, end: at, text: '\n\n' },
        { start: { line: 3, character: 4 }, end: { line: 3, character: 5 }, text: '9' },
      ],
      2,
    );
    assert.equal(workspace.get(main)?.script.document.text(), '\n\na = 1\nb = 9\n');
  });

  it('that is not open changes nothing, has no findings and closes without a word (D04)', async () => {
    const { workspace, affected } = await opened('');
    assert.equal(workspace.change(club, [whole(0, 'x')], 2), undefined);
    assert.deepEqual(workspace.findings(club), []);
    assert.equal(workspace.stamp(club), undefined);
    assert.equal(workspace.close(club), undefined);
    assert.deepEqual(affected, []);
  });

  it('is gone once it is closed (D04)', async () => {
    const { workspace } = await opened('[gyro]\nwobble = 1\n');
    assert.equal(workspace.close(main)?.uri, main);
    assert.deepEqual(workspace.findings(main), []);
    assert.equal(workspace.get(main), undefined);
    assert.deepEqual(workspace.allOpen(), []);
  });

  it('may be opened again with another text', async () => {
    const { workspace, ids } = await opened('wobble = 1\n');
    assert.deepEqual(ids(), ['line/unknown-name']);
    workspace.openScript(main, '[gyro]\n', 9);
    assert.deepEqual(ids(), []);
  });
});

describe('an included script', () => {
  it('is read from the disk once, and its findings come when it is there', async () => {
    const fileSystem = new MemoryFiles({ 'club.craft': cutoff('120 Hz') });
    const { workspace, affected, value, ids } = workspaceOver(fileSystem);
    workspace.openScript(main, includes, 1);
    assert.deepEqual(ids(), [], 'nothing is said while it is being read');
    assert.equal(value(), 'not set');
    await workspace.settled();
    assert.equal(value(), '120 Hz');
    assert.deepEqual(affected, [[main]]);
    assert.deepEqual(fileSystem.read, [club]);
    workspace.openScript('test:///work/other.craft', includes, 1);
    await workspace.settled();
    assert.deepEqual(fileSystem.read, [club]);
  });

  it('is followed into what it includes itself', async () => {
    const { value, fileSystem } = await opened(includes, {
      'club.craft': 'include "low.craft"\n',
      'low.craft': 'include "lower.craft"\n',
      'lower.craft': cutoff('70 Hz'),
    });
    assert.equal(value(), '70 Hz');
    assert.equal(fileSystem.read.length, 3);
  });

  it('counts as it stands in the editor, as long as it is open there (D06)', async () => {
    const { workspace, value, fileSystem, affected } = await opened(includes, {
      'club.craft': cutoff('120 Hz'),
    });
    workspace.openScript(club, cutoff('100 Hz'), 1);
    assert.equal(value(), '100 Hz');
    workspace.change(club, [whole(1, 'cutoff = 110 Hz\n')], 2);
    assert.equal(value(), '110 Hz');
    assert.deepEqual(affected.at(-1), [main]);
    fileSystem.files.set(club, cutoff('130 Hz'));
    workspace.diskChanged(club);
    await workspace.settled();
    assert.equal(value(), '110 Hz');
    workspace.close(club);
    await workspace.settled();
    assert.equal(value(), '130 Hz', 'after it is closed the disk counts');
  });

  it('is read again when the disk says so, and only then (D06)', async () => {
    const { workspace, value, fileSystem } = await opened(includes, { 'club.craft': cutoff('120 Hz') });
    fileSystem.files.set(club, cutoff('130 Hz'));
    await workspace.settled();
    assert.equal(value(), '120 Hz');
    workspace.diskChanged(club);
    await workspace.settled();
    assert.equal(value(), '130 Hz');
  });

  it('may appear and go away (D05)', async () => {
    const { workspace, ids, value, fileSystem } = await opened(includes);
    assert.deepEqual(ids(), ['line/include-missing']);
    fileSystem.files.set(club, cutoff('120 Hz'));
    workspace.diskChanged(club);
    await workspace.settled();
    assert.deepEqual([ids(), value()], [[], '120 Hz']);
    fileSystem.files.delete(club);
    workspace.diskChanged(club);
    await workspace.settled();
    assert.deepEqual([ids(), value()], [['line/include-missing'], 'not set']);
  });

  it('is looked for again when its folder moves (D05)', async () => {
    const { workspace, ids, fileSystem } = await opened('include "parts/club.craft"\n', {
      'parts/club.craft': '',
    });
    assert.deepEqual(ids(), []);
    fileSystem.files.delete('test:///work/parts/club.craft');
    workspace.diskChanged('test:///work/parts');
    await workspace.settled();
    assert.deepEqual(ids(), ['line/include-missing']);
  });

  it('has its own craft when it is open, and each is told of the other', async () => {
    const { workspace, affected, ids } = await opened(includes, { 'club.craft': '' });
    workspace.openScript(club, 'let quiet = 90 Hz\n', 1);
    affected.length = 0;
    workspace.change(main, [whole(0, `${includes}[gyro.filter.1]\ncutoff = queit\n`)], 2);
    assert.deepEqual(affected, [], 'the including script is no part of the included one');
    assert.deepEqual(ids(), ['line/unknown-constant']);
    workspace.change(club, [whole(0, 'let queit = 90 Hz\n')], 2);
    assert.deepEqual(affected, [[main]]);
    assert.deepEqual(ids(), []);
  });

  it('is found under the name that the editor has for it', async () => {
    const fileSystem = new MemoryFiles();
    const { workspace } = workspaceOver(fileSystem);
    const { craft } = workspace.openScript('file:///work/main.craft', 'include "my club (1).craft"\n', 1);
    await workspace.settled();
    workspace.openScript('file:///work/my%20club%20%281%29.craft', cutoff('90 Hz'), 1);
    assert.equal(held(craft, 'gyro.filter.1.cutoff'), '90 Hz');
    assert.equal(workspace.script('file:///work/my club (1).craft')?.document.lineCount, 3);
  });
});

describe('a file that cannot be included', () => {
  const reasons: readonly [string, string | Error, RegExp][] = [
    ['is no text', 'a\u0000b', /it is not a text/],
    ['is far too long', 'x\n'.repeat(longestScript), /it is too long/],
    ['cannot be read', new Error('it is a folder'), /it is a folder/],
  ];
  for (const [what, text, reason] of reasons) {
    it(`because it ${what} is told with the reason`, async () => {
      const { workspace } = await opened(includes, { 'club.craft': text });
      const [found] = workspace.findings(main);
      assert.equal(found?.check.id, `line/include-${what === 'is far too long' ? 'too-long' : 'refused'}`);
      assert.match(found?.values.why ?? '', reason);
    });
  }

  it('because it lies outside is told with the reason of the fileSystem, until the folders change', async () => {
    const { workspace, fileSystem, ids, affected } = await opened('include "club.craft"\n', {
      'club.craft': '',
    });
    assert.deepEqual(ids(), []);
    fileSystem.refused.set(club, 'it lies outside the workspace');
    workspace.rootsChanged([]);
    assert.deepEqual(ids(), ['line/include-refused']);
    assert.deepEqual(affected.at(-1), [main]);
    fileSystem.refused.clear();
    workspace.rootsChanged([]);
    assert.deepEqual(ids(), []);
  });

  it('is known no more once its folder has left the workspace', async () => {
    const { workspace } = await opened('include "club.craft"\n', { 'club.craft': '' });
    const known = () => workspace.allRead().map(({ uri }) => uri);
    workspace.rootsChanged(['file:///elsewhere']);
    assert.deepEqual(known(), [main, club]);
    workspace.close(main);
    workspace.rootsChanged([club.replace('club.craft', '')]);
    assert.deepEqual(known(), []);
  });

  it('is told without a reason when the fileSystem gives none', async () => {
    const { workspace } = workspaceOver({
      readText: () => Promise.reject('no reason'),
      readPieces: async () => null,
      list: async () => [],
      folders: () => [],
      foldersOf: () => [],
      scriptsBelow: async () => ({ scripts: [], unread: [], isCut: false }),
      refusal: () => null,
    });
    workspace.openScript(main, includes, 1);
    await workspace.settled();
    assert.equal(workspace.findings(main)[0]?.values.why, 'it could not be read');
  });
});

describe('an answer of the disk that comes late', () => {
  /** A disk that answers when the test wants it to. */
  function slowFiles() {
    const waiting: ((text: string | null) => void)[] = [];
    const fileSystem: FileSystem = {
      readText: () => new Promise((resolve) => waiting.push(resolve)),
      readPieces: async () => null,
      list: async () => [],
      folders: () => [],
      foldersOf: () => [],
      scriptsBelow: async () => ({ scripts: [], unread: [], isCut: false }),
      refusal: () => null,
    };
    const turn = () => new Promise((resolve) => setImmediate(resolve));
    return { fileSystem, waiting, turn };
  }

  it('is dropped when the file has changed since it was asked (D02)', async () => {
    const { fileSystem, waiting, turn } = slowFiles();
    const { workspace, value } = workspaceOver(fileSystem);
    workspace.openScript(main, includes, 1);
    workspace.findings(main);
    await turn();
    workspace.diskChanged(club);
    workspace.findings(main);
    await turn();
    const [first, second] = waiting;
    second?.(cutoff('130 Hz'));
    await turn();
    first?.(cutoff('120 Hz'));
    await turn();
    assert.equal(value(), '130 Hz');
  });

  it('says nothing to a script that was closed meanwhile (D04)', async () => {
    const { fileSystem, waiting, turn } = slowFiles();
    const { workspace, affected } = workspaceOver(fileSystem);
    workspace.openScript(main, includes, 1);
    workspace.findings(main);
    await turn();
    workspace.close(main);
    waiting[0]?.('');
    await turn();
    assert.deepEqual(affected, []);
  });
});

describe('texts from a disk', () => {
  it('lose the byte order mark that only disks have, so that columns stay true (A06)', async () => {
    assert.equal(withoutMark('\ufeff[gyro]'), '[gyro]');
    assert.equal(withoutMark('[gyro]\ufeff'), '[gyro]\ufeff');
    const { value, ids } = await opened(includes, { 'club.craft': `\ufeff${cutoff('120 Hz')}` });
    assert.deepEqual([value(), ids()], ['120 Hz', []]);
  });

  it('have the same lines as open ones, whatever ends them (A04)', async () => {
    const mixed = 'let a = 1\rlet b = 2\nbadkey = 3\r\n';
    const { workspace } = await opened(includes, { 'club.craft': mixed });
    const [found] = workspace.findings(main);
    const place = found?.related[0]?.place;
    assert.equal(place?.script.lineNumber(place.line), 2);
    workspace.openScript(club, mixed, 1);
    const [own] = workspace.findings(club);
    assert.equal(own?.place.script.lineNumber(own.place.line), 2);
    assert.deepEqual(workspace.get(club)?.script.constantNames(), ['a', 'b']);
  });

  it('are binary with a NUL in them', () => {
    assert.ok(isBinary('a\u0000'));
    assert.ok(!isBinary('a\u0001'));
  });
});
