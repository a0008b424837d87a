import { strict as assert } from 'node:assert';
import { fixTitle } from '../../../../server/src/checks/report/render';
import { craftOf, findingsOf } from '../../../support/findings';

describe('a switch that arms where it rests', () => {
  const fixesWith = (...more: readonly string[]) =>
    findingsOf(craftOf(['switch.arm.channel = 5', 'switch.arm.on = 950..1250 us', ...more].join('\n')))
      .filter(({ check }) => check.id === 'obey/arm-at-rest')
      .flatMap(({ fixes }) => fixes.map(fixTitle));

  it('may arm at the other end', () => {
    assert.deepEqual(fixesWith(), ['Arm at the other end']);
    assert.deepEqual(fixesWith('switch.arm.at-loss = 1000 us'), ['Arm at the other end']);
  });

  it('is not sent to where it goes when the link is lost', () => {
    assert.deepEqual(fixesWith('switch.arm.at-loss = 1900 us'), []);
  });
});
