import { strict as assert } from 'node:assert';
import type { DocumentEdit } from '../../../server/src/language/document';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const habits = 'test:///work/habits.craft';
const craft = 'test:///work/craft.craft';
const habitsText = 'let quiet = 90 Hz\n';
const using = 'include "habits.craft"\n[gyro.filter.1]\nkind = butterworth\ncutoff = 2 * quiet\n';
const notUsing = 'include "habits.craft"\n[craft]\nname = "quiet"  # quiet\n';

function over(files: Readonly<Record<string, string>>) {
  const fileSystem = new MemoryFiles(files);
  const affected: string[] = [];
  const workspace = new Workspace({
    catalog: testCatalog,
    fileSystem,
    onAffected: (uris) => affected.push(...uris),
    onFault: (id, error) => {
      throw new Error(`${id} failed`, { cause: error });
    },
  });
  /** The constants of a script of which it is said that nothing uses them. */
  const unused = async (uri = habits) => {
    await workspace.settled();
    return workspace
      .findings(uri)
      .filter(({ check }) => check.id === 'line/constant-unused')
      .map(({ values }) => values.name);
  };
  return { workspace, fileSystem, affected, unused };
}

function replaced(lines: number, text: string): DocumentEdit {
  return { start: { line: 0, character: 0 }, end: { line: lines, character: 0 }, text };
}

describe('a constant that nothing uses', () => {
  const said: readonly [string, string, readonly string[]][] = [
    ['is told', 'let a = 1\nlet b = 2 * a\n', ['b']],
    ['is none where a line uses it', 'let a = 2\n[gyro.filter.1]\nq = a\n', []],
    ['is none where what uses it is broken', 'let a = 2\n[gyro.filter.1]\nq = a * (\n', []],
    ['is none where what uses it sets nothing that is known', 'let a = 2\n[gyro.filter.1]\nqq = a\n', []],
    ['is none where a minus has no blanks', 'let a = 9 Hz\n[gyro.filter.1]\ncutoff = a-2 Hz\n', []],
    ['is none where it is misspelt in use', 'let quiet = 9 Hz\n[gyro.filter.1]\ncutoff = quite\n', []],
    ['is not told beside what is wrong with it', 'let a = 1 / 0\n', []],
    ['is not told where it is set twice', 'let a = 1\nlet a = 2\n', []],
    ['is not told while something is missing', 'include "gone.craft"\nlet a = 1\n', []],
  ];
  for (const [title, text, names] of said) {
    it(title, async () => {
      const { workspace, unused } = over({});
      workspace.openScript(habits, text, 1);
      assert.deepEqual(await unused(), names);
    });
  }

  it('is found in what the script includes as well', async () => {
    const { workspace, unused } = over({ 'filters.craft': '[gyro.filter.1]\ncutoff = quiet\n' });
    workspace.openScript(habits, `include "filters.craft"\n${habitsText}`, 1);
    assert.deepEqual(await unused(), []);
  });

  it('is none where a script on the disk uses it that includes this one, through others too', async () => {
    const files = { 'habits.craft': habitsText, 'between.craft': 'include "habits.craft"\n' };
    const around = over({ ...files, 'craft.craft': using.replace('habits', 'between') });
    around.workspace.openScript(habits, habitsText, 1);
    assert.deepEqual(await around.unused(), []);
    around.fileSystem.files.set(craft, notUsing);
    around.workspace.diskChanged(craft);
    assert.deepEqual(await around.unused(), ['quiet']);
  });

  it('follows what an open script says that includes this one', async () => {
    const { workspace, affected, unused } = over({ 'craft.craft': using });
    workspace.openScript(habits, habitsText, 1);
    workspace.openScript(craft, notUsing, 1);
    assert.deepEqual(await unused(), ['quiet']);
    affected.length = 0;
    workspace.change(craft, [replaced(3, using)], 2);
    assert.ok(affected.includes(habits));
    assert.deepEqual(await unused(), []);
    workspace.change(craft, [replaced(4, notUsing)], 3);
    assert.deepEqual(await unused(), ['quiet']);
    workspace.close(craft);
    assert.deepEqual(await unused(), []);
  });
});
