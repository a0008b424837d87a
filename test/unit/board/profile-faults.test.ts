import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { Speller } from '../../../server/src/board/meaning/spelling';
import { profileOf } from '../../../server/src/board/profile/profile';
import { problemsOf, workspaceWithBoard } from '../../support/additions';
import { meaningsOn, valueOn } from '../../support/board-crafts';
import { testCatalog } from '../../support/catalog';
import { built } from '../../support/other-boards';

type Json = Record<string, unknown>;

interface Row extends Json {
  name: string;
}

/** The example board, its comments taken out, to be broken in one place. */
function finch() {
  const text = readFileSync('test/demo/boards/finch.jsonc', 'utf8').replace(/^\s*\/\/.*$/gm, '');
  return JSON.parse(text) as {
    hardware: { ports: Json[]; rails: Json[]; gyro: Json; packInput: Json } & Json;
    text: Json;
    members: Json;
    settings: Row[];
  } & Json;
}

/** What is told of the board with one setting's row changed. */
function toldOfRow(name: string, change: Json) {
  const board = finch();
  const row = board.settings.find((one) => one.name === name);
  assert.ok(row, name);
  Object.assign(row, change);
  return toldOfBoard(board);
}

function toldOfBoard(board: Json) {
  const file = 'boards/finch.json';
  return problemsOf(workspaceWithBoard(file, board), file).map(([, marked, message]) => [marked, message]);
}

describe('a board profile that can lead nowhere', () => {
  it('is none as the example stands', () => assert.deepEqual(toldOfBoard(finch()), []));

  const counts: readonly (readonly [name: string, counts: Json, marked: string, message: string])[] = [
    ['idle', { step: '0 %' }, '"0 %"', '0 % is no step in %: it must be more than nothing'],
    ['idle', { step: '-0.1 %' }, '"-0.1 %"', '-0.1 % is no step in %: it must be more than nothing'],
    ['idle', { step: '1e-320 %' }, '"1e-320 %"', '1e-320 % is no step in %: it must be more than nothing'],
    ['idle', { step: '1e400 %' }, '"1e400 %"', '"1e400 %" is no finite number'],
    ['idle', { step: '0.1 V' }, '"0.1 V"', '"0.1 V" is not a share'],
    ['idle', { step: '60 %' }, '"60 %"', 'a step of 60 % leaves motor.idle one value at the most'],
    ['idle', { limits: ['30 %', '1 %'] }, '["30 %","1 %"]', '30 % to 1 % does not rise'],
    ['idle', { limits: ['5 %', '5 %'] }, '["5 %","5 %"]', '5 % to 5 % does not rise'],
    ['idle', { limits: ['0 %', '1e999 %'] }, '"1e999 %"', '"1e999 %" is no finite number'],
    [
      '{member}-smoothing-at',
      { limits: ['5 kHz', '9 kHz'] },
      '["5 kHz","9 kHz"]',
      '5 kHz to 9 kHz leaves nothing of what gyro.filter.<number>.cutoff can be',
    ],
    ['{member}-channel', { step: '0' }, '"0"', '0 is no step: it must be more than nothing'],
    ['{member}-channel', { step: '-1' }, '"-1"', '-1 is no step: it must be more than nothing'],
    ['{member}-channel', { step: '0.5' }, '"0.5"', '"0.5" is no whole number'],
  ];
  for (const [name, change, marked, message] of counts) {
    it(`is refused at its place: ${name} that counts ${JSON.stringify(change)}`, () =>
      assert.deepEqual(toldOfRow(name, { counts: change }), [[marked, message]]));
  }

  const rows: readonly (readonly [name: string, change: Json, marked: string, message: string])[] = [
    ['idle', { means: 'motor.idel' }, '"motor.idel"', 'there is no parameter motor.idel'],
    ['idle', { as: 'low' }, '"low"', 'motor.idle is a quantity: "as" is left out'],
    ['idle', { role: 'motor.idle' }, '"motor.idle"', 'what has a meaning needs no role'],
    ['idle', { name: 'blink', group: 'hands' }, '"blink"', 'blink stands in the profile twice'],
    ['idle', { name: '{member}-idle' }, '"{member}-idle"', 'motor.idle has no members to stand for {member}'],
    ['idle', { means: 'gyro.filter.3.cutoff', counts: { step: '1 Hz' } }, '', ''],
    [
      '{member}-channel',
      { name: 'channel' },
      '"channel"',
      'switch.<function>.channel needs {member} in the name, or one member in the place of <…>',
    ],
    ['{member}-channel', { group: '{member}' }, '"{member}-channel"', '{member} stands there twice'],
    ['{member}-channel', { occurrence: 2 }, '2', 'a name with {member} has no occurrence of its own'],
    [
      '{member}-from',
      { as: 'high' },
      '"switch.<function>.on"',
      'switch.<function>.on is what {member}-from means already',
    ],
    [
      'roll-full',
      { means: 'signal-loss.switch-on', as: 'low', counts: { step: '1 us' }, name: 'lost-from' },
      '"signal-loss.switch-on"',
      'signal-loss.switch-on needs "high" as well',
    ],
    [
      'roll-half',
      { as: { at: '100 %' } },
      '"stick.roll.curve"',
      'stick.roll.curve is what roll-half means already',
    ],
    [
      'roll-half',
      { as: undefined },
      '"stick.roll.curve"',
      'stick.roll.curve is a curve: "as" says {"at": point}',
    ],
    [
      '{member}-smoothing',
      { spelled: { steep: 'strong' } },
      '"strong"',
      '"steep" is no word of gyro.filter.<number>.kind',
    ],
    [
      '{member}-smoothing',
      { spelled: { none: 'none', notch: 'none' } },
      '{"none":"none","notch":"none"}',
      '"none" stands for two words',
    ],
    ['blink', { spelled: { on: 'lit' } }, '{"on":"lit"}', '"spelled" needs "means"'],
    ['blink', { role: 'motor.blink' }, '"motor.blink"', 'there is no parameter motor.blink'],
    [
      'blink',
      { name: '{member}-blink' },
      '"{member}-blink"',
      '{member} needs "means": whose members are these?',
    ],
  ];
  for (const [name, change, marked, message] of rows) {
    it(`is ${marked === '' ? 'taken' : 'refused at its place'}: ${name} with ${JSON.stringify(change)}`, () =>
      assert.deepEqual(toldOfRow(name, change).slice(-1), marked === '' ? [] : [[marked, message]]));
  }

  it('is refused at its place: members that a collection does not have', () => {
    const wrong = (members: Json) => toldOfBoard({ ...finch(), members: { ...finch().members, ...members } });
    assert.deepEqual(wrong({ 'video.channel': { '1': 'one' } }), [
      ['{"1":"one"}', 'there is no collection video.channel'],
    ]);
    assert.deepEqual(wrong({ switch: { arm: 'live', locate: 'live' } }), [
      ['{"arm":"live","locate":"live"}', '"live" stands for two members'],
    ]);
    const [[marked, message] = []] = wrong({ switch: { arm: 'live', dance: 'sway' } });
    assert.equal(marked, '"sway"');
    assert.match(message ?? '', /^"dance" is none of switch: /);
  });

  const hardware: readonly (readonly [
    title: string,
    change: (board: ReturnType<typeof finch>) => void,
    marked: string,
    message: RegExp,
  ])[] = [
    [
      'a rail of no volts',
      ({
        hardware: {
          rails: [one],
        },
      }) => Object.assign(one ?? {}, { voltage: '0 V' }),
      '"0 V"',
      /^0 V lies outside what is possible: /,
    ],
    [
      'a rail that gives less than nothing',
      ({
        hardware: {
          rails: [one],
        },
      }) => Object.assign(one ?? {}, { currentLimit: '-1 A' }),
      '"-1 A"',
      /^-1 A lies outside/,
    ],
    [
      'a gyro that stands still',
      ({ hardware: { gyro } }) => Object.assign(gyro, { rates: ['0 Hz'] }),
      '"0 Hz"',
      /^0 Hz lies outside/,
    ],
    [
      'a gyro without end',
      ({ hardware: { gyro } }) => Object.assign(gyro, { rates: ['1e400 Hz'] }),
      '"1e400 Hz"',
      /no finite number/,
    ],
    [
      'a gyro that reaches nothing',
      ({ hardware: { gyro } }) => Object.assign(gyro, { fullScale: '0 deg/s' }),
      '"0 deg/s"',
      /lies outside/,
    ],
    [
      'a divider of nothing',
      ({ hardware: { packInput } }) => Object.assign(packInput, { dividerLower: '0 kohm' }),
      '"0 kohm"',
      /lies outside/,
    ],
    [
      'a reference below nothing',
      ({ hardware: { packInput } }) => Object.assign(packInput, { reference: '-3.3 V' }),
      '"-3.3 V"',
      /lies outside/,
    ],
    [
      'a pack of a thousand cells',
      ({ hardware: { packInput } }) => Object.assign(packInput, { mostCells: 1000 }),
      '1000',
      /^1000 lies outside what is possible: 1 to 24/,
    ],
    [
      'a log of nothing',
      ({ hardware }) => Object.assign(hardware, { log: { medium: 'flash', size: '0 MB' } }),
      '"0 MB"',
      /lies outside/,
    ],
    [
      'a clock that stands',
      ({ hardware }) => Object.assign(hardware, { serialClock: '0 Hz' }),
      '"0 Hz"',
      /it must tick/,
    ],
    [
      'a port that reads nothing, inverted',
      ({
        hardware: {
          ports: [one],
        },
      }) => Object.assign(one ?? {}, { directions: ['out'] }),
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

  const told = (forms: Json, name: string, text: Json = {}) =>
    problemsOf(
      workspaceWithBoard('boards/reed.json', {
        name: 'reed',
        text: { forms: { container: 'lines', ...forms }, ...text },
        settings: [{ name, means: 'motor.idle' }],
      }),
      'boards/reed.json',
    ).map(([, marked, message]) => [marked, message]);

  it('may have names with blanks where its form says how they end', () => {
    const form = '{name} {value}';
    assert.deepEqual(told({ lines: [{ form, names: 'words' }] }, 'gyro rate'), []);
    assert.deepEqual(told({ lines: [{ form, names: 'word' }] }, 'gyro rate'), [
      ['"gyro rate"', 'gyro rate can’t be told apart from the rest of its line'],
    ]);
    assert.deepEqual(told({ lines: [{ form }], comments: ['gy'] }, 'gyro'), [
      ['"gyro"', 'gyro can’t be told apart from the rest of its line'],
    ]);
  });

  it('is refused at its place: a form that lacks a field, or holds one that it may not', () => {
    assert.deepEqual(told({}, 'gyro'), [
      ['{"container":"lines"}', 'settings in lines need a form of a line'],
    ]);
    assert.deepEqual(told({ lines: [{ form: '= {value}' }] }, 'gyro'), [
      ['"= {value}"', 'the form needs the field {name}'],
    ]);
    const lines = [{ form: '{name} = {value}' }];
    assert.deepEqual(told({ lines, headings: ['[section]'] }, 'gyro'), [
      ['"[section]"', 'the form needs the field {group}'],
    ]);
    assert.deepEqual(told({ lines, closing: ['end of {name}'] }, 'gyro'), [
      ['"end of {name}"', 'the form cannot hold {name}; it may hold {board}, {count}'],
    ]);
    assert.deepEqual(told({ lines }, 'gyro', { command: 'put {value}' }), [
      ['"put {value}"', 'the form needs the field {name}'],
    ]);
    assert.deepEqual(told({ lines }, 'gyro', { command: ['{name} becomes {value}', 'keep'] }).length, 1);
  });

  it('is refused where a number has no end', () => {
    for (const what of ['scale', 'offset']) {
      const text = JSON.stringify(finch()).replace('"scale":10', `"${what}":1e400`);
      const additions = workspaceWithBoard('boards/finch.json', text);
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
  const profile = profileOf(wren) ?? assert.fail();
  const numbers = meaningsOn(profile, testCatalog).filter(({ found }) =>
    ['quantity', 'count', 'range', 'curve', 'place'].includes(found.parameter.kind),
  );

  it('is a number with an end, or is refused, whatever a profile says', () => {
    for (const told of numbers) {
      const values = valueOn(told, testCatalog);
      if (values === null) continue;
      fc.assert(
        fc.property(values, extreme, extreme, fc.boolean(), (value, scale, offset, hasStep) => {
          const parts = told.meaning.parts.map((part) => {
            const { step, ...counts } = part.setting.counts ?? {};
            const kept = hasStep && step !== undefined ? { step } : {};
            const odd = { ...counts, ...kept, scale: scale || 1, offset };
            return { ...part, setting: { ...part.setting, counts: odd } };
          });
          const odd = { ...told.meaning, parts };
          const spelled = new Speller(odd, told.found, profile.manner).write(value);
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
    const { settings } = testCatalog.board('wren') ?? assert.fail();
    const changed = settings.map((row) =>
      row.means === parameter ? { ...row, counts: { ...row.counts, step } } : row,
    );
    const script = ['board.profile = coarse', ...lines].join('\n');
    return built({ name: 'coarse', settings: changed }, script)
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
