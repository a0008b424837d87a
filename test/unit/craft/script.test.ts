import { strict as assert } from 'node:assert';
import { inputKeys } from '../../../server/src/craft/keys';
import { Script } from '../../../server/src/craft/script';
import type { DocumentEdit } from '../../../server/src/language/document';
import { testCatalog } from '../../support/catalog';
import { spelled } from '../../support/spelled-keys';

function scriptOf(text: string): Script {
  return new Script('test:///work/main.craft', text, testCatalog);
}

function replace(line: number, start: number, end: number, text: string): DocumentEdit {
  return { start: { line, character: start }, end: { line, character: end }, text };
}

const text = 'let quiet = 90 Hz\n[pack.sprint]\ncells = 6\n[gyro.filter.1]\ncutoff = 2 * quiet\n';

describe('a script', () => {
  it('finds its lines by what they say, in their order', () => {
    const script = scriptOf(`${text}[gyro]\n[gyro.filter.1]\ncutoff = 120 Hz\n`);
    assert.deepEqual(
      script.lines(inputKeys.setting('gyro.filter.1.cutoff')).map((line) => script.lineNumber(line)),
      [4, 7],
    );
    assert.ok(script.has(inputKeys.constant('quiet')));
    assert.ok(!script.has(inputKeys.constant('loud')));
    assert.deepEqual(script.constantNames(), ['quiet']);
    assert.deepEqual([...script.settingPaths()], ['pack.sprint.cells', 'gyro.filter.1.cutoff']);
  });

  it('keeps its lines in order through edits that put one above the other', () => {
    const script = scriptOf('let a = 1\n');
    script.edit([replace(0, 0, 0, 'let a = 2\n')]);
    assert.deepEqual(
      script.lines(inputKeys.constant('a')).map((line) => line.text),
      ['let a = 2', 'let a = 1'],
    );
  });

  it('knows the members and the groups that it names', () => {
    const script = scriptOf(text);
    assert.deepEqual(script.membersOf('pack'), ['sprint']);
    assert.deepEqual(script.membersOf('switch'), []);
    assert.ok(script.hasGroup('gyro'));
    assert.ok(!script.hasGroup('craft'));
  });

  it('knows its faulty lines, and those that are right are none', () => {
    const script = scriptOf('[gyro]\nrate = 8 kHz\nwobble = 1\n');
    assert.deepEqual(
      [...script.problems].map(([line, problems]) => [script.lineNumber(line), problems.map(({ id }) => id)]),
      [[2, ['line/unknown-name']]],
    );
  });
});

describe('an edit of a script', () => {
  const changes: readonly [string, DocumentEdit, readonly string[]][] = [
    ['a value', replace(2, 8, 9, '4'), ['setting pack.sprint.cells']],
    ['a comment', replace(2, 9, 9, ' # six'), ['setting pack.sprint.cells']],
    ['a constant', replace(0, 12, 14, '80'), ['constant quiet', 'constants', 'first line']],
    [
      'the name of a constant',
      replace(0, 4, 9, 'calm'),
      ['constant calm', 'constant quiet', 'constants', 'first line'],
    ],
    ['an empty line', replace(5, 0, 0, '\n'), []],
    ['a new group', replace(5, 0, 0, '[craft]\n'), ['group craft', 'section craft']],
    ['a new include', replace(5, 0, 0, 'include "a.craft"'), ['include']],
    [
      'the name of a pack',
      replace(1, 6, 12, 'dash'),
      [
        'headers pack',
        'members pack',
        'section pack.dash',
        'section pack.sprint',
        'setting pack.dash.cells',
        'setting pack.sprint.cells',
      ],
    ],
    [
      'a repeated setting with something wrong',
      replace(5, 0, 0, 'cutoff = 1 Hz\n'),
      ['setting gyro.filter.1.cutoff'],
    ],
  ];
  for (const [what, edit, keys] of changes) {
    it(`of ${what} changes ${keys.join(', ') || 'nothing'}`, () => {
      const changed = [...spelled(scriptOf(text).edit([edit]))];
      assert.deepEqual(changed.sort(), [...keys].sort());
    });
  }

  it('makes the same script as reading the new text', () => {
    const script = scriptOf(text);
    script.edit([replace(1, 6, 12, 'dash'), replace(4, 0, 18, ''), replace(0, 0, 17, '[craft]')]);
    const fresh = scriptOf(script.document.text());
    assert.deepEqual(script.membersOf('pack'), fresh.membersOf('pack'));
    assert.deepEqual([...script.settingPaths()].sort(), [...fresh.settingPaths()].sort());
    assert.equal(script.dynamicLines.size, fresh.dynamicLines.size);
    assert.equal(script.hasGroup('craft'), true);
    assert.equal(script.problems.size, fresh.problems.size);
  });

  it('of a value leaves names where they are, and says nothing of what they belong to', () => {
    const script = scriptOf('let a = 1\nlet b = 2\npack.sprint.cells = 6\n');
    assert.deepEqual(spelled(script.edit([replace(1, 8, 9, '3')])), ['constant b', 'constants']);
    assert.deepEqual(script.constantNames(), ['a', 'b']);
    assert.deepEqual(spelled(script.edit([replace(2, 20, 21, '4')])), ['setting pack.sprint.cells']);
  });

  it('keeps count of the lines that need the craft, one by one', () => {
    const script = scriptOf('let a = b + 1\nlet a = c\n');
    assert.equal(script.dynamicLines.size, 2);
    script.edit([replace(0, 0, 13, '')]);
    assert.equal(script.dynamicLines.size, 1);
    script.edit([replace(1, 0, 9, '')]);
    assert.equal(script.dynamicLines.size, 0);
  });

  it('replaces the one object that stands for the edited line, and no other', () => {
    const lines = Array.from({ length: 5000 }, (_, index) =>
      index % 25 === 0 ? `[flight.f${index}]` : `note = "${index}"`,
    );
    const script = scriptOf(lines.join('\n'));
    const before = [...script.document.lines()];
    const changed = script.edit([replace(2501, 8, 8, 'x')]);
    const after = [...script.document.lines()];
    const replaced = after.filter((line, number) => line !== before[number]);
    assert.equal(replaced.length, 1);
    assert.equal(after[2501], replaced[0]);
    assert.deepEqual(
      spelled(changed).filter((key) => key.startsWith('setting ')),
      ['setting flight.f2500.note'],
    );
  });

  it('of a section header replaces the lines of this section, and no other', () => {
    const lines = Array.from({ length: 5000 }, (_, index) =>
      index % 25 === 0 ? `[flight.f${index}]` : `note = "${index}"`,
    );
    const script = scriptOf(lines.join('\n'));
    const before = new Set(script.document.lines());
    script.edit([replace(2500, 9, 9, 'x')]);
    assert.equal([...script.document.lines()].filter((line) => !before.has(line)).length, 25);
  });
});
