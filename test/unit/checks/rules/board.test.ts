import assert from 'node:assert/strict';
import { type Profile, profileOf } from '../../../../server/src/board/profile/profile';
import { Translator } from '../../../../server/src/board/translation';
import { boardEdits } from '../../../../server/src/features/board/edits';
import { boardProblems, noProfileProblem } from '../../../../server/src/features/board/problems';
import { testCatalog } from '../../../support/catalog';

const board = testCatalog.board('heron');
const heron = board === undefined ? null : profileOf(board);

function translated(lines: readonly string[]) {
  assert.ok(heron);
  return new Translator(heron as Profile, testCatalog).translate(lines);
}

/** What the profile says of lines of a Heron: the id and the text under the mark. */
function told(lines: readonly string[]): readonly (readonly string[])[] {
  return boardProblems(translated(lines), testCatalog).map(({ check, range: { start, end } }) => [
    check.id,
    lines[start.line]?.slice(start.character, end.character) ?? '',
  ]);
}

/** The smallest text that a check tells about, with what is marked, and the nearest that it lets pass. */
const cases: readonly (readonly [
  id: string,
  marked: string,
  faulty: readonly string[],
  sound: readonly string[],
])[] = [
  [
    'board/unreadable',
    'gyro rate = 6.4',
    ['in quiet:', ' gyro rate = 6.4 '],
    ['in quiet:', 'gyro rate is 6.4;'],
  ],
  [
    'board/unknown-setting',
    'gyro rat',
    ['in quiet:', 'gyro rat is 6.4;'],
    ['in quiet:', 'gyro rate is 6.4;'],
  ],
  [
    'board/unknown-setting',
    'gyro rate',
    ['in radio:', 'gyro rate is 6.4;'],
    ['in quiet:', 'gyro rate is 6.4;'],
  ],
  ['board/value-unclear', 'quick', ['in quiet:', 'gyro rate is quick;'], ['in quiet:', 'gyro rate is 6.4;']],
  [
    'board/value-unclear',
    'first-order',
    ['in quiet:', 'turning filter 1 sort is first-order;'],
    ['in quiet:', 'turning filter 1 sort is gentle;'],
  ],
  [
    'board/part-missing',
    'arming live from',
    ['in levers:', 'arming live from is 1750;'],
    ['in levers:', 'arming live from is 1750;', 'arming live to is 2050;'],
  ],
];

describe('checks: board', () => {
  for (const [id, marked, faulty, sound] of cases) {
    it(`${id} tells about: ${faulty.at(-1)}`, () => assert.deepEqual(told(faulty), [[id, marked]]));
    it(`${id} lets pass: ${sound.at(-1)}`, () => assert.deepEqual(told(sound), []));
  }

  it('board/no-profile tells about a text that nobody knows, in words', () => {
    const [problem] = noProfileProblem(testCatalog);
    assert.equal(problem?.check.id, 'board/no-profile');
    assert.match(problem?.message ?? '', /^No board profile knows this text/);
  });

  it('each have a case', () => {
    const held = new Set([...cases.map(([id]) => id), 'board/no-profile']);
    const ids = [...testCatalog.checks.keys()].filter((id) => id.startsWith('board/'));
    assert.deepEqual(
      ids.filter((id) => !held.has(id)),
      [],
    );
  });
});

describe('edits of a script in a board’s spelling', () => {
  const text = [
    'in levers:',
    'arming live from is 1750;',
    'arming live to is 2050;',
    'heron has heard 2 settings.',
  ];
  const line = (start: number, end: number) => ({
    start: { line: 1, character: start },
    end: { line: 1, character: end },
  });

  it('reach every setting that holds a part of the value', () => {
    const translation = translated(text);
    const script = translation.lines[1]?.script ?? '';
    assert.equal(script, 'switch.arm.on = 1750..2050 us');
    const edit = { range: line(script.indexOf('1750'), script.length), newText: '1700..2000 us' };
    const edits = boardEdits(translation, testCatalog, [edit]) ?? [];
    assert.deepEqual(
      edits.map(({ range, newText }) => [range.start.line, newText]),
      [
        [1, '1700'],
        [2, '2000'],
      ],
    );
  });

  it('add a setting below its group, with a heading where there is none', () => {
    const edit = { range: line(0, 0), newText: '[arming]\ntilt-limit = 30 deg\n' };
    const [added] = boardEdits(translated(text), testCatalog, [edit]) ?? [];
    assert.equal(added?.newText, 'in readiness:\narming tilt limit is 30;\n');
    assert.equal(added?.range.start.line, 3);
  });

  it('are none where the board has no words for them', () => {
    const edit = { range: line(0, 0), newText: '[craft]\nmass = 212 g\n' };
    assert.equal(boardEdits(translated(text), testCatalog, [edit]), null);
  });
});
