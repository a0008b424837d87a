import { strict as assert } from 'node:assert';
import type { Craft } from '../../../server/src/craft/craft';
import { Query } from '../../../server/src/query/query';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

function workspaceOver(fileSystem: MemoryFiles): Workspace {
  const onFault = (id: string, error: unknown) => {
    throw new Error(`${id} failed`, { cause: error });
  };
  return new Workspace({ catalog: testCatalog, fileSystem, onFault });
}

describe('after one edit of a long script', () => {
  const flights = Array.from({ length: 5000 }, (_, index) =>
    index % 10 === 0 ? `[flight.f${index}]` : `note = "${index}"`,
  );
  const uri = 'test:///work/main.craft';

  it('of one value, one line object is new and every other is the same one', () => {
    const workspace = workspaceOver(new MemoryFiles());
    const { script } = workspace.openScript(uri, flights.join('\n'), 1);
    const before = [...script.document.lines()];
    const at = { line: 2503, character: 8 };
    workspace.change(uri, [{ start: at, end: at, text: 'x' }], 2);
    const after = [...script.document.lines()];
    assert.equal(after.length, before.length);
    assert.deepEqual(
      after.flatMap((line, number) => (line === before[number] ? [] : [number])),
      [2503],
    );
  });

  it('that puts a line in, one line object is new and every other is the same one', () => {
    const workspace = workspaceOver(new MemoryFiles());
    const { script } = workspace.openScript(uri, flights.join('\r\n'), 1);
    const before = new Set(script.document.lines());
    const at = { line: 2503, character: 0 };
    workspace.change(uri, [{ start: at, end: at, text: 'site = "orchard"\r\n' }], 2);
    const fresh = [...script.document.lines()].filter((line) => !before.has(line));
    assert.ok(fresh.length <= 2, `${fresh.length} lines were made anew`);
    assert.equal(script.document.lineCount, 5001);
  });

  it('of a header, members are in the order of the headers that are left', () => {
    const workspace = workspaceOver(new MemoryFiles());
    const named = 'pack.a.cells = 4\npack.b.cells = 4\n';
    const { craft } = workspace.openScript(uri, `${named}[pack.b]\n[pack.a]\n`, 1);
    assert.deepEqual(craft.packs(), ['b', 'a']);
    workspace.change(
      uri,
      [{ start: { line: 2, character: 0 }, end: { line: 3, character: 0 }, text: '' }],
      2,
    );
    assert.deepEqual(craft.packs(), ['a', 'b']);
  });

  it('answers that the edit does not concern are not computed again', () => {
    const workspace = workspaceOver(new MemoryFiles());
    const { craft, script } = workspace.openScript(
      uri,
      `let quiet = 60 Hz\n[gyro.filter.1]\ncutoff = 2 * quiet\n${flights.join('\n')}`,
      1,
    );
    let computed = 0;
    const note = new Query('a note', (one: Craft) => {
      computed += 1;
      return one.setting('flight.f100.note', null)?.value;
    });
    const noted = () => note.get(craft);
    const before = craft.setting('gyro.filter.1.cutoff', null);
    noted();
    const at = { line: 14, character: 8 };
    workspace.change(uri, [{ start: at, end: at, text: 'x' }], 2);
    assert.equal(craft.setting('gyro.filter.1.cutoff', null), before);
    assert.deepEqual(noted(), craft.setting('flight.f100.note', null)?.value);
    assert.equal(computed, 1);
    const constant = { line: 0, character: 12 };
    workspace.change(uri, [{ start: constant, end: constant, text: '1' }], 3);
    assert.notEqual(craft.setting('gyro.filter.1.cutoff', null), before);
    noted();
    assert.equal(computed, 1);
    const origin = craft.setting('flight.f100.note', null)?.origin;
    assert.ok(origin);
    const own = { line: script.lineNumber(origin.line), character: 8 };
    workspace.change(uri, [{ start: own, end: own, text: 'x' }], 4);
    assert.deepEqual(noted(), craft.setting('flight.f100.note', null)?.value);
    assert.equal(computed, 2);
  });
});
