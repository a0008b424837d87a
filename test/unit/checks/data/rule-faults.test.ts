import { strict as assert } from 'node:assert';
import { placeText } from '../../../../server/src/catalog/faults/fault';
import type { DataCheck } from '../../../../server/src/catalog/model/check';
import { ruleFaults } from '../../../../server/src/checks/data/rule-faults';
import { testCatalog } from '../../../support/catalog';
import { ruleOf } from '../../../support/own-checks';

function faults(told: Partial<DataCheck>): readonly string[] {
  const check = ruleOf({ when: ['gyro.rate is set'], at: 'gyro.rate', ...told });
  return ruleFaults(check, testCatalog).map((one) => `${placeText(one)}: ${one.message}`);
}

describe('a rule that is written as data', () => {
  it('is fine when everything in it can be read', () => {
    const found = faults({
      each: 'pack',
      when: [
        'pack.<name>.cells >= 4',
        'pack.<name>.chemistry is lipo',
        'figure.control-period < 1 ms',
        'arming.needs has gyro-still',
        'motor.idle + 1 % > 2 %',
      ],
      at: 'pack.<name>.cells',
      message:
        '{member} has {pack.<name>.cells} cells: {pack.<name>.capacity / 2 in mAh}, {figure.control-period}.',
      related: [{ at: 'gyro.rate', message: 'It is {gyro.rate}.' }],
      fixes: [{ title: 'Take {gyro.rate}', set: 'gyro.rate', to: '{gyro.rate}' }],
    });
    assert.deepEqual(found, []);
  });

  const cases: readonly (readonly [title: string, told: Partial<DataCheck>, said: string])[] = [
    ['a name that there is not', { when: ['gyro.rat > 1 kHz'] }, '.when[0]: there is no parameter gyro.rat'],
    ['a figure that there is not', { when: ['figure.luck > 1'] }, '.when[0]: there is no figure luck'],
    ['a constant', { when: ['quiet > 1 Hz'] }, '.when[0]: quiet is no parameter; a rule has no constants'],
    [
      'a comparison of unlike things',
      { when: ['gyro.rate > 1 ms'] },
      '.when[0]: a frequency is compared with a time',
    ],
    [
      'a figure of another dimension',
      { when: ['figure.control-period > 1 kHz'] },
      '.when[0]: a time is compared with a frequency',
    ],
    ['a sum of unlike things', { when: ['gyro.rate + 1 ms > 1 kHz'] }, 'a frequency'],
    ['a text in a comparison', { when: ['craft.name > 1'] }, 'craft.name holds no single number'],
    ['a word that there is not', { when: ['pack.a.chemistry is lead'] }, 'never is lead; its words: lipo'],
    ['a list without "has"', { when: ['arming.needs is level'] }, 'arming.needs is a list: write "has"'],
    ['a word with "has"', { when: ['receiver.link has crsf'] }, 'receiver.link is no list: write "is"'],
    ['a condition that is none', { when: ['gyro.rate'] }, '"gyro.rate" is not a condition'],
    ['a place that there is not', { at: 'gyro.rat' }, '.at: there is no gyro.rat'],
    [
      'a slot that there is not',
      { message: 'It is {gyro.rat} now.' },
      '.message: there is no parameter gyro.rat',
    ],
    ['a slot in another dimension', { advice: 'Take {gyro.rate / 2 in ms}.' }, 'is not told in ms'],
    ['a slot in no unit', { advice: 'Take {gyro.rate / 2 in blinks}.' }, '"blinks" is not a unit'],
    ['a member of nothing', { message: 'It is {member} now.' }, '{member} needs a collection'],
    ['a collection that there is not', { each: 'gyro' }, '.each: gyro is no collection'],
    [
      'a fix of nothing',
      { fixes: [{ title: 'Mend it', set: 'gyro.rat', to: '1 kHz' }] },
      '.fixes[0].set: there is no gyro.rat',
    ],
  ];
  for (const [title, told, said] of cases) {
    it(`is refused with ${title}`, () => {
      const found = faults(told);
      assert.equal(found.length, 1, found.join('\n'));
      assert.ok(found[0]?.includes(said), found[0]);
    });
  }
});
