import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { Speller } from '../../../server/src/board/spelling';
import { additionsOf, problemsOf } from '../../support/additions';
import { rowsOf, valueOn } from '../../support/board-crafts';
import { testCatalog } from '../../support/catalog';
import { built } from '../../support/other-boards';

type Json = Record<string, unknown>;

interface Row extends Json {
  parameter: string;
}

/** The example board, its comments taken out, to be broken in one place. */
function finch() {
  const text = readFileSync('test/demo/boards/finch.jsonc', 'utf8').replace(/^\s*\/\/.*$/gm, '');
  return JSON.parse(text) as {
    ports: Json[];
    rails: Json[];
    gyro: Json;
    packInput: Json;
    log: unknown;
    names: { settings: Row[] }[];
  } & Json;
}

/** What is told of the board with one setting's row changed. */
function toldOfRow(parameter: string, change: Json) {
  const board = finch();
  const row = board.names.flatMap(({ settings }) => settings).find((one) => one.parameter === parameter);
  assert.ok(row, parameter);
  Object.assign(row, change);
  return toldOfBoard(board);
}

function toldOfBoard(board: Json) {
  const file = 'boards/finch.json';
  return problemsOf(additionsOf({ [file]: board }), file).map(([, marked, message]) => [marked, message]);
}

describe('a board profile that can lead nowhere', () => {
  it('is none as the example stands', () => assert.deepEqual(toldOfBoard(finch()), []));

  const rows: readonly (readonly [parameter: string, change: Json, marked: string, message: string])[] = [
    ['motor.idle', { step: '0 %' }, '"0 %"', '0 % is no step in %: it must be more than nothing'],
    ['motor.idle', { step: '-0.1 %' }, '"-0.1 %"', '-0.1 % is no step in %: it must be more than nothing'],
    [
      'motor.idle',
      { step: '1e-320 %' },
      '"1e-320 %"',
      '1e-320 % is no step in %: it must be more than nothing',
    ],
    ['motor.idle', { step: '1e400 %' }, '"1e400 %"', '"1e400 %" is no finite number'],
    ['motor.idle', { step: '0.1 V' }, '"0.1 V"', '"0.1 V" is not a share'],
    ['motor.idle', { step: '60 %' }, '"60 %"', 'a step of 60 % leaves motor.idle one value at the most'],
    [
      'motor.idle',
      { limits: ['30 %', '1 %'] },
      '[\n            "30 %",\n            "1 %"\n          ]',
      '30 % to 1 % does not rise',
    ],
    [
      'motor.idle',
      { limits: ['5 %', '5 %'] },
      '[\n            "5 %",\n            "5 %"\n          ]',
      '5 % to 5 % does not rise',
    ],
    ['motor.idle', { limits: ['0 %', '1e999 %'] }, '"1e999 %"', '"1e999 %" is no finite number'],
    [
      'gyro.filter.<number>.cutoff',
      { limits: ['5 kHz', '9 kHz'] },
      '[\n            "5 kHz",\n            "9 kHz"\n          ]',
      '5 kHz to 9 kHz leaves nothing of what gyro.filter.<number>.cutoff can be',
    ],
    ['switch.<function>.channel', { step: '0' }, '"0"', '0 is no step: it must be more than nothing'],
    ['switch.<function>.channel', { step: '-1' }, '"-1"', '-1 is no step: it must be more than nothing'],
    ['switch.<function>.channel', { step: '0.5' }, '"0.5"', '"0.5" is no whole number'],
    ['stick.roll.curve', { at: ['100 %', '50 %'] }, '"50 %"', '50 % does not rise above the point before'],
    ['stick.roll.curve', { at: ['50 %', '150 %'] }, '"150 %"', '150 % lies beyond the end of the curve'],
  ];
  for (const [parameter, change, marked, message] of rows) {
    it(`is refused at its place: ${parameter} with ${JSON.stringify(change)}`, () =>
      assert.deepEqual(toldOfRow(parameter, change), [[marked, message]]));
  }

  const hardware: readonly (readonly [
    title: string,
    change: (board: ReturnType<typeof finch>) => void,
    marked: string,
    message: RegExp,
  ])[] = [
    [
      'a rail of no volts',
      ({ rails: [one] }) => Object.assign(one ?? {}, { voltage: '0 V' }),
      '"0 V"',
      /^0 V lies outside what is possible: /,
    ],
    [
      'a rail that gives less than nothing',
      ({ rails: [one] }) => Object.assign(one ?? {}, { currentLimit: '-1 A' }),
      '"-1 A"',
      /^-1 A lies outside/,
    ],
    [
      'a gyro that stands still',
      ({ gyro }) => Object.assign(gyro, { rates: ['0 Hz'] }),
      '"0 Hz"',
      /^0 Hz lies outside/,
    ],
    [
      'a gyro without end',
      ({ gyro }) => Object.assign(gyro, { rates: ['1e400 Hz'] }),
      '"1e400 Hz"',
      /no finite number/,
    ],
    [
      'a gyro that reaches nothing',
      ({ gyro }) => Object.assign(gyro, { fullScale: '0 deg/s' }),
      '"0 deg/s"',
      /lies outside/,
    ],
    [
      'a divider of nothing',
      ({ packInput }) => Object.assign(packInput, { dividerLower: '0 kohm' }),
      '"0 kohm"',
      /lies outside/,
    ],
    [
      'a reference below nothing',
      ({ packInput }) => Object.assign(packInput, { reference: '-3.3 V' }),
      '"-3.3 V"',
      /lies outside/,
    ],
    [
      'a pack of a thousand cells',
      ({ packInput }) => Object.assign(packInput, { mostCells: 1000 }),
      '1000',
      /^1000 lies outside what is possible: 1 to 24/,
    ],
    [
      'a log of nothing',
      (board) => Object.assign(board, { log: { medium: 'flash', size: '0 MB' } }),
      '"0 MB"',
      /lies outside/,
    ],
    [
      'a clock that stands',
      (board) => Object.assign(board, { serialClock: '0 Hz' }),
      '"0 Hz"',
      /it must tick/,
    ],
    [
      'a port that reads nothing, inverted',
      ({ ports: [one] }) => Object.assign(one ?? {}, { directions: ['out'] }),
      'true',
      /uart1 reads nothing/,
    ],
  ];
  for (const [title, change, marked, message] of hardware) {
    it(`is refused at its place: ${title}`, () => {
      const board = finch();
      change(board);
      const [[at, said] = [], ...more] = toldOfBoard(board);
      assert.deepEqual([at, more], [marked, []]);
      assert.match(said ?? '', message);
    });
  }

  it('is refused where a number has no end', () => {
    for (const what of ['scale', 'offset']) {
      const text = JSON.stringify(finch()).replace('"scale":10', `"${what}":1e400`);
      const additions = additionsOf({ 'boards/finch.json': text });
      assert.deepEqual(
        problemsOf(additions, 'boards/finch.json').map(([id, marked]) => [id, marked]),
        [['addition/shape', '1e400']],
      );
    }
  });
});

describe('what is written to a board', () => {
  const extreme = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(Number.MAX_VALUE, Number.MIN_VALUE, 1e-300, 1e300, -1e15, 1e-15, 10, 1),
  );
  const wren = testCatalog.board('wren') ?? assert.fail();
  const rows = rowsOf(wren, testCatalog).filter(({ found }) =>
    ['quantity', 'count', 'range', 'curve', 'place'].includes(found.parameter.kind),
  );
  const text = wren.text ?? assert.fail();

  it('is a number with an end, or is refused, whatever a profile says', () => {
    for (const told of rows) {
      const values = valueOn(told, testCatalog);
      if (values === null) continue;
      fc.assert(
        fc.property(values, extreme, extreme, fc.boolean(), (value, scale, offset, hasStep) => {
          const { step, ...row } = told.row;
          const odd = {
            ...row,
            ...(hasStep && step !== undefined ? { step } : {}),
            scale: scale || 1,
            offset,
          };
          const spelled = new Speller(odd, told.found, text).write(value);
          if (spelled.kind === 'refused' || value.kind === 'word') return;
          for (const one of spelled.texts) assert.match(one, /^-?\d{1,15}(\.\d{1,15})?$/);
        }),
        { numRuns: 20 },
      );
    }
  });
});

describe('what a board makes of a value', () => {
  const coarse = (parameter: string, step: string, ...lines: readonly string[]) => {
    const { names, text } = testCatalog.board('wren') ?? assert.fail();
    const changed = names.map((group) => ({
      ...group,
      settings: group.settings.map((row) => (row.parameter === parameter ? { ...row, step } : row)),
    }));
    const script = ['board.profile = coarse', ...lines].join('\n');
    return built({ name: 'coarse', names: changed, ...(text === undefined ? {} : { text }) }, script)
      .filter(({ id }) => id.startsWith('line/board-'))
      .map(({ id, level, message }) => [id, level, message]);
  };

  it('is a must-fix where it is another one, and has no fix that would write it', () => {
    assert.deepEqual(coarse('motor.idle', '10 %', 'motor.idle = 4.9 %'), [
      [
        'line/board-loses',
        'must-fix',
        'Wren would hold 10 % in place of 4.9 %, because it counts in steps of 10 %.',
      ],
    ]);
    assert.deepEqual(
      coarse(
        'stick.roll.curve',
        '400 deg/s',
        'stick.roll.curve = 0 % -> 0 deg/s, 50 % -> 170 deg/s, 100 % -> 650 deg/s',
      ).map(([id]) => id),
      ['line/board-loses'],
    );
  });

  it('is a note where it is only rounded', () => {
    assert.deepEqual(
      coarse('motor.idle', '1 %', 'motor.idle = 5.4 %').map(([id, level]) => [id, level]),
      [['line/board-step', 'note']],
    );
    assert.deepEqual(
      coarse('board.mount-roll', '1 deg', 'board.mount-roll = 0.4 deg').map(([id]) => id),
      ['line/board-step'],
    );
    assert.deepEqual(
      coarse('board.heat-warning', '1 degC', 'board.heat-warning = 70.4 degC').map(([id]) => id),
      ['line/board-step'],
    );
  });
});
