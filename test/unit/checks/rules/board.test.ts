import assert from 'node:assert/strict';
import type { BoardLayer } from '../../../../server/src/board/layer/layer';
import { LayerReader } from '../../../../server/src/board/layer/layer-reader';
import { type Profile, profileOf } from '../../../../server/src/board/profile/profile';
import type { BoardSetting } from '../../../../server/src/catalog/model/board-profile';
import { boardEdits } from '../../../../server/src/features/board/edits';
import { boardProblems } from '../../../../server/src/features/board/problems';
import { testCatalog } from '../../../support/catalog';

const board = testCatalog.board('heron');
const heron = board === undefined ? null : profileOf(board);

function read(lines: readonly string[], profile: Profile | null = heron): BoardLayer {
  return new LayerReader(testCatalog, profile).read(lines.join('\n'));
}

/** What is told about a text: the id and the text under the mark. */
function told(layer: BoardLayer): readonly (readonly string[])[] {
  const problems = boardProblems(layer, testCatalog).filter(({ check }) => check.id !== 'board/no-profile');
  return problems.map(({ check, range: { start, end } }) => [
    check.id,
    layer.texts[start.line]?.slice(start.character, end.character) ?? '',
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
    'what was this',
    ['in quiet:', 'gyro rate is 6.4;', '  what was this '],
    ['in quiet:', 'gyro rate is 6.4;'],
  ],
  [
    'board/unknown-setting',
    'gyro rat',
    ['in quiet:', 'gyro rat is 6.4;'],
    ['in quiet:', 'gyro rate is 6.4;'],
  ],
  [
    'board/unlisted-setting',
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
    it(`${id} tells about: ${faulty.at(-1)}`, () => assert.deepEqual(told(read(faulty)), [[id, marked]]));
    it(`${id} lets pass: ${sound.at(-1)}`, () => assert.deepEqual(told(read(sound)), []));
  }

  it('board/too-much tells about a text that is not read at all', () => {
    const long = (length: number) => ['lamp: 2', 'horn: 3', `pace: 5${' '.repeat(length - 23)}`];
    assert.deepEqual(told(read(long(10_000_001), null)), [['board/too-much', '']]);
    assert.deepEqual(told(read(long(1000), null)), []);
  });

  it('board/no-settings tells about a text in which nothing is a setting', () => {
    assert.deepEqual(told(read(['in quiet:', 'and so on'])), [['board/no-settings', '']]);
    assert.deepEqual(told(read([''], null)), []);
  });

  it('board/no-profile tells about a text that nobody knows, in words', () => {
    const [problem, ...others] = boardProblems(read(['lamp: 2', 'horn: 3', 'pace: 5'], null), testCatalog);
    assert.deepEqual([problem?.check.id, others], ['board/no-profile', []]);
    assert.match(problem?.message ?? '', /^No board profile knows this text/);
  });

  it('board/acceptance-unmatched and board/beside-unreadable tell what is kept beside a text and does not count', () => {
    const setting = { groups: [], name: 'lamp', occurrence: 1 };
    const check = 'safe/arms-at-any-tilt';
    const gone = { setting: { ...setting, groups: ['eyes'] }, check, reason: 'it hangs on a hook' };
    const again = { setting, check: 'line/outside-usual', reason: 'so by design' };
    const accepted = [
      { setting, check, reason: 'it hangs on a hook' },
      again,
      gone,
      { ...gone, setting, reason: 'todo' },
    ];
    const kept = { board: null, accepted, fault: 'line 3: a text was expected' };
    const layer = new LayerReader(testCatalog, null, kept).read('lamp: 2\nhorn: 3\npace: 5');
    assert.deepEqual(
      boardProblems(layer, testCatalog)
        .map(({ message }) => message)
        .slice(1),
      [
        "The .board.json beside this text can't be read: line 3: a text was expected.",
        'Beside this text line/outside-usual is accepted for lamp, which accepts another risk already.',
        'Beside this text safe/arms-at-any-tilt is accepted for eyes lamp, which is not in it.',
        'Beside this text safe/arms-at-any-tilt is accepted for lamp, and no reason is given.',
      ],
    );
  });

  it('board/part-of-listing tells about a text of which one end is missing', () => {
    const whole = Array.from({ length: 16 }, (_, index) => `lamp-${index + 1}: ${index + 2}`);
    const { forms } = read(whole, null);
    const settings: BoardSetting[] = whole.map((line) => ({ name: line.slice(0, line.indexOf(':')) }));
    const own = profileOf({ name: 'lark', text: { forms }, settings });
    const part = (from: number, to: number) => {
      const [problem] = boardProblems(read(whole.slice(from, to), own), testCatalog);
      return problem === undefined ? null : `${problem.range.start.line} ${problem.message}`;
    };
    const end =
      'The end of the listing is missing: 5 settings that the profile of lark has there, from lamp-12 on.';
    assert.equal(part(0, 11), `10 ${end}`);
    assert.match(
      part(6, 16) ?? '',
      /^0 The beginning of the listing is missing: 6 settings .* from lamp-1 on\.$/,
    );
    for (const [from, to] of [
      [0, 16],
      [0, 13],
      [0, 9],
      [2, 13],
    ] as const)
      assert.equal(part(from, to), null);
    const omitting = profileOf({ name: 'lark', text: { forms, omitsDefaults: true }, settings });
    assert.deepEqual(told(read(whole.slice(0, 11), omitting)), []);
  });

  it('each have a case', () => {
    const held = new Set([
      ...cases.map(([id]) => id),
      'board/too-much',
      'board/no-settings',
      'board/no-profile',
      'board/acceptance-unmatched',
      'board/beside-unreadable',
      'board/part-of-listing',
      ...ofStatements,
    ]);
    const ids = [...testCatalog.checks.keys()].filter((id) => id.startsWith('board/'));
    assert.deepEqual(
      ids.filter((id) => !held.has(id)),
      [],
    );
  });
});

/** Found by what a listing states beside its settings. */
const ofStatements = ['board/outside-stated', 'board/word-unlisted', 'board/statement-doubted'];

const stating = [
  'lamp: dim (one of dim, bright, blink)',
  'pace: 40 (from 10 to 90)',
  'reach: 4.5 (from 1.0 to 8.0)',
  'horn: 3 (from 1 to 5)',
  'bell: 2 (from 1 to 5)',
];

/** The same text with some of its lines changed after it was opened. */
function changed(profile: Profile | null, edits: ReadonlyMap<number, string>): BoardLayer {
  const reader = new LayerReader(testCatalog, profile);
  reader.read(stating.join('\n'));
  return reader.read(stating.map((line, number) => edits.get(number) ?? line).join('\n'));
}

describe('checks of what a listing states beside its settings', () => {
  it('let pass what it allows', () => {
    assert.deepEqual(told(changed(null, new Map([[0, 'lamp: blink (one of dim, bright, blink)']]))), []);
    assert.deepEqual(told(changed(null, new Map([[1, 'pace: 90 (from 10 to 90)']]))), []);
  });

  it('tell about a word that it does not state, with the one that was meant', () => {
    const layer = changed(null, new Map([[0, 'lamp: brigth (one of dim, bright, blink)']]));
    assert.deepEqual(told(layer), [['board/word-unlisted', 'brigth']]);
    const problem = boardProblems(layer, testCatalog).at(-1);
    assert.match(problem?.message ?? '', /Did you mean bright\?/);
    assert.equal(problem?.fixes[0]?.edits[0]?.newText, 'bright');
  });

  it('tell about a value outside its range, and about one that is no number', () => {
    assert.deepEqual(told(changed(null, new Map([[1, 'pace: 95 (from 10 to 90)']]))), [
      ['board/outside-stated', '95'],
    ]);
    assert.deepEqual(told(changed(null, new Map([[1, 'pace: 4o (from 10 to 90)']]))), [
      ['board/outside-stated', '4o'],
    ]);
  });

  it('doubt the listing where the board itself printed such a value, once for all of them', () => {
    const layer = read([...stating, 'tone: 9 (from 1 to 5)', 'buzz: 0 (from 1 to 5)'], null);
    assert.deepEqual(told(layer), [['board/statement-doubted', '9']]);
    assert.match(boardProblems(layer, testCatalog).at(-1)?.message ?? '', /^tone and 1 more came/);
  });

  it('believe a range of a value with a unit that begins with a stroke', () => {
    const lines = ['grip: 4.5 /s   // 0 to 20', 'lean: 45 deg   // 10 to 80', 'pace: 9 deg/s   // 5 to 90'];
    assert.deepEqual(told(read(lines, null)), []);
  });

  it('go by the profile where it states something, however the text was opened', () => {
    const { forms } = read(stating, null);
    const settings: BoardSetting[] = [
      { name: 'pace', range: ['10', '60'] },
      ...['lamp', 'reach', 'horn', 'bell'].map((name) => ({ name })),
    ];
    const own = profileOf({ name: 'lark', text: { forms }, settings });
    assert.deepEqual(told(read([...stating.slice(2), 'pace: 70 (from 10 to 90)'], own)), [
      ['board/outside-stated', '70'],
    ]);
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
    start: { line: 0, character: start },
    end: { line: 0, character: end },
  });

  it('reach every setting that holds a part of the value', () => {
    const layer = read(text);
    const script = layer.lines[0]?.script ?? '';
    assert.equal(script, 'switch.arm.on = 1750..2050 us');
    const edit = { range: line(script.indexOf('1750'), script.length), newText: '1700..2000 us' };
    const edits = boardEdits(layer, testCatalog, [edit]) ?? [];
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
    const [added] = boardEdits(read(text), testCatalog, [edit]) ?? [];
    assert.equal(added?.newText, 'in readiness:\narming tilt limit is 30;\n');
    assert.equal(added?.range.start.line, 3);
  });

  it('are none where the board has no words for them', () => {
    const edit = { range: line(0, 0), newText: '[craft]\nmass = 212 g\n' };
    assert.equal(boardEdits(read(text), testCatalog, [edit]), null);
  });
});
