import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { holds, readCondition } from '../../../../server/src/checks/data/condition';
import { dataScope } from '../../../../server/src/checks/data/data-scope';
import { neverTriggers } from '../../../../server/src/checks/data/never';
import { CraftView } from '../../../../server/src/craft/view';
import { testCatalog } from '../../../support/catalog';
import { craftOf } from '../../../support/findings';
import { ruleOf } from '../../../support/own-checks';

const never = (...when: readonly string[]) =>
  neverTriggers(ruleOf({ when: [...when], at: 'gyro.rate' }), testCatalog);

describe('a rule that no script can trigger', () => {
  const cases: readonly (readonly string[])[] = [
    ['gyro.rate is set', 'gyro.rate is missing'],
    ['receiver.link is crsf', 'receiver.link is sbus'],
    ['receiver.link is crsf', 'receiver.link is not crsf'],
    ['gyro.rate > 2 kHz', 'gyro.rate < 1 kHz'],
    ['gyro.rate > 2 kHz', 'gyro.rate < 2 kHz'],
    ['gyro.rate > 2 kHz', '1 kHz >= gyro.rate'],
    ['gyro.rate > 900 kHz'],
    ['gyro.rate * 2 > 900 kHz'],
    ['motor.poles = 3 / 2', 'motor.poles = 2'],
    ['motor.poles < -1 * motor.poles'],
    ['min(motor.poles, 4) > 5'],
    ['sqrt(motor.poles) < -1'],
    ['2 > 3'],
    ['2 != 2'],
    ['receiver.link is missing', 'receiver.link is crsf'],
  ];
  for (const when of cases) it(`is found out: ${when.join(' and ')}`, () => assert.ok(never(...when)));
});

describe('a rule that some script can trigger', () => {
  const cases: readonly (readonly string[])[] = [
    ['gyro.rate > 2 kHz', 'gyro.rate < 4 kHz'],
    ['gyro.rate >= 2 kHz', 'gyro.rate <= 2 kHz'],
    ['gyro.rate != 2 kHz'],
    ['receiver.link is crsf', 'receiver.link is not sbus'],
    ['figure.control-period > 900 s'],
    ['gyro.rate > 2 * control.rate'],
    ['1 / (motor.poles - 4) > 100'],
    ['abs(motor.poles - 4) > 2'],
    ['clamp(motor.poles, 2, 4) = 3'],
    ['max(motor.poles, 4) > 5'],
  ];
  for (const when of cases) it(`is let be: ${when.join(' and ')}`, () => assert.ok(!never(...when)));
});

describe('what is said never to hold', () => {
  const poles = fc.integer({ min: 2, max: 40 }).map((half) => 2 * half);
  const number = fc.integer({ min: -50, max: 50 });
  const term = fc.oneof(number.map(String), fc.constant('motor.poles'), fc.constant('motor.cells-limit'));
  const joined = fc
    .tuple(term, fc.constantFrom(' + ', ' - ', ' * ', ' / '), term)
    .map((parts) => parts.join(''));
  const called = fc
    .tuple(fc.constantFrom('min', 'max'), term, joined)
    .map(([name, a, b]) => `${name}(${a}, ${b})`);
  const side = fc.oneof(term, joined, called);
  const condition = fc.tuple(side, fc.constantFrom('<', '<=', '>', '>=', '=', '!='), side);

  it('holds for no values of any script', () => {
    fc.assert(
      fc.property(fc.array(condition, { minLength: 1, maxLength: 3 }), poles, (told, count) => {
        const when = told.map((parts) => parts.join(' '));
        const view = new CraftView(craftOf(`[motor]\npoles = ${count}\ncells-limit = 6\n`), null);
        const scope = dataScope(view);
        const isTrue = when.every((text) => holds(readCondition(text), view, scope));
        assert.ok(!(isTrue && never(...when)), when.join(' and '));
      }),
      { numRuns: 1000 },
    );
  });
});
