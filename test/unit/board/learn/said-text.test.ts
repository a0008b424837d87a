import assert from 'node:assert/strict';
import { readSaid } from '../../../../server/src/board/learn/said-text';
import { testCatalog } from '../../../support/catalog';

function read(text: string) {
  return readSaid(text, testCatalog);
}

describe('what a pilot types to say what a setting means', () => {
  it('names a setting with whatever stands in its name, and a parameter', () => {
    assert.deepEqual(read('a = b/c d=motor.idle'), {
      kind: 'said',
      key: 'a = b/c d',
      said: { means: 'motor.idle' },
    });
    assert.deepEqual(read('own.gyro=gyro.rate=gyro.rate plain'), {
      kind: 'said',
      key: 'own.gyro=gyro.rate',
      said: { means: 'gyro.rate', counted: {} },
    });
  });

  it('says unit, scale, offset, step, limits and base', () => {
    const text =
      'spin/heat=board.heat-warning unit K scale 0.1 offset 5 step 0.5 K limits 40 degC..90 degC base 16';
    assert.deepEqual(read(text), {
      kind: 'said',
      key: 'spin/heat',
      said: {
        means: 'board.heat-warning',
        counted: { unit: 'K', scale: 10, offset: 5 },
        more: { step: '0.5 K', limits: ['40 degC', '90 degC'], base: 16 },
      },
    });
    const third = read('x=motor.idle scale 1/3');
    assert.deepEqual(third.kind === 'said' && third.said.counted, { scale: 3 });
  });

  it('says words with the board’s first, steps, parts, and the place among several values', () => {
    assert.deepEqual(read('a=gyro.filter.1.kind words lean slope=first-order,0=none'), {
      kind: 'said',
      key: 'a',
      said: { means: 'gyro.filter.1.kind', spelled: { 'first-order': 'lean slope', none: '0' } },
    });
    assert.deepEqual(read('a=video.power table 1=25 mW,high=400 mW'), {
      kind: 'said',
      key: 'a',
      said: { means: 'video.power', counted: { table: { 1: '25 mW', high: '400 mW' } } },
    });
    assert.deepEqual(read('a=stick.roll.curve at 0 %, 50 %,100 % value 2'), {
      kind: 'said',
      key: 'a',
      said: { means: 'stick.roll.curve', parts: [{ at: '0 %' }, { at: '50 %' }, { at: '100 %' }], item: 2 },
    });
  });

  const wrong: readonly (readonly [text: string, message: RegExp])[] = [
    ['spin/soften', /^"spin\/soften" is no "setting=parameter", such as /],
    ['a=gyro.filter.<number>.cutoff', /^say which one gyro\.filter\.<number>\.cutoff is/],
    ['a=gyro.filter.1.cutof', /^there is no parameter gyro\.filter\.1\.cutof, in "a=/],
    ['a=own.setting', /^there is no parameter own\.setting/],
    ['a=motor.idle unit Hz', /^"unit": "Hz" is not a share/],
    ['a=motor.idle unti %', /^"unti" is none of unit, scale, .*: unit\?/],
    ['a=motor.idle scale', /^nothing stands behind "scale"/],
    ['a=motor.idle scale soft', /^"scale" takes a number, not "soft"/],
    ['a=motor.idle scale 0', /^a scale of 0 leaves nothing/],
    ['a=motor.idle scale 2 scale 3', /^"scale" is said twice/],
    ['a=motor.idle plain scale 2', /^"plain" is the parameter’s own unit/],
    ['a=motor.poles unit Hz', /^a count has no unit/],
    ['a=motor.idle step 200 %', /^"step": a step of 200 % leaves /],
    ['a=motor.idle limits 5 %', /^"limits" takes two ends, such as "20 %\.\.500 %"/],
    ['a=motor.idle limits 9 %..5 %', /^"limits": 9 % to 5 % does not rise/],
    ['a=motor.idle base 7', /^"base" is 2, 8 or 16, not "7"/],
    [
      'a=gyro.filter.1.kind words slow=buterworth',
      /^"buterworth" is no word of gyro\.filter\.1\.kind: butterworth\?/,
    ],
    ['a=gyro.filter.1.kind words slow', /^"words" takes what the board writes and what it means/],
    ['a=gyro.filter.1.kind words a=none,b=none', /^"none" is spelled in two ways/],
    ['a=video.power table 1=25 Hz', /^"table 1": "25 Hz" is not a power/],
    ['a=switch.arm.on part mid', /^"part" is low, high, row or column, not "mid"/],
    ['a=switch.arm.on part low entry 1', /^"part" and "entry" are not both said of one setting/],
    ['a=motor.idle at 5 %', /^"at" is a point of a curve, and motor\.idle is none/],
    ['a=stick.roll.curve at 5 Hz', /^"at": "5 Hz" is not a share/],
    ['a=motor.order entry 0', /^"entry" takes a number from 1 on, not "0"/],
    ['a=motor.order number-of front-lft', /^"front-lft" is no word of motor\.order: front-left\?/],
    ['a=motor.idle has buzzer', /^"has" is about a word of a list, and motor\.idle is none/],
    ['a=arming.beep bit 40', /^"bit" takes a number from 0, the lowest, to 31, not "40"/],
    ['a=power.alarm bits 0=buzzer,40=lights', /^"bits" takes numbers from 0, the lowest, to 31, not "40"/],
    ['a=power.alarm bits 0=buzzer,0=lights', /^"bits" says bit 0 twice/],
    ['a=power.alarm bits 0=buzzer,1=buzzer', /^"bits" says buzzer twice/],
    ['a=power.alarm bits 0=buzer', /^"buzer" is no word of power\.alarm: buzzer\?/],
    ['a=power.alarm bits 0=buzzer has lights', /^"bits" says it all: "has" is not said with it/],
    ['a=arming.beep bits 0=buzzer', /^"bits" is about a word of a list, and arming\.beep is none/],
    [
      'a=power.alarm bits buzzer',
      /^"bits" takes what the board writes and what it means, such as "0=buzzer,3=lights"/,
    ],
    ['a=arming.beep bit 2 value 1', /^"bit" and "value" are not both said/],
    [
      'a=power.alarm bit 2',
      /^one bit says on or off, and power\.alarm is more: of a list say which word it "has"/,
    ],
    ['a=motor.idle value x', /^"value" takes a number from 1 on, not "x"/],
  ];

  for (const [text, message] of wrong)
    it(`is told what is wrong in it: ${text}`, () => {
      const found = read(text);
      assert.equal(found.kind, 'wrong');
      assert.match(found.message, message);
    });
});
