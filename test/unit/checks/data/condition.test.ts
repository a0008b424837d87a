import { strict as assert } from 'node:assert';
import { holds, readCondition, readExpressionText } from '../../../../server/src/checks/data/condition';
import { dataScope } from '../../../../server/src/checks/data/data-scope';
import { CraftView } from '../../../../server/src/craft/view';
import { craftOf } from '../../../support/findings';

const text = [
  '[pack.sprint]',
  'cells = 6',
  'capacity = 550 mAh',
  'discharge = 100 C',
  '[gyro]',
  'rate = 8 kHz',
  '[gyro.filter.1]',
  'kind = none',
  'cutoff = 1,2,3',
  '[receiver]',
  'inverted = on',
  'reversed = [roll, yaw]',
  '[level]',
  'blend-to = 30 %',
].join('\n');

function told(condition: string): boolean {
  const view = new CraftView(craftOf(text), 'sprint');
  return holds(readCondition(condition), view, dataScope(view));
}

describe('a condition of a rule', () => {
  const cases: readonly [string, boolean][] = [
    ['gyro.rate > 4 kHz', true],
    ['gyro.rate > 8 kHz', false],
    ['gyro.rate >= 8 kHz', true],
    ['gyro.rate < 8 kHz', false],
    ['gyro.rate <= 8 kHz', true],
    ['gyro.rate = 8000 Hz', true],
    ['gyro.rate != 8000 Hz', false],
    ['gyro.rate != 4 kHz', true],
    ['gyro.rate / 4 = 2 kHz', true],
    ['pack.sprint.cells = 6', true],
    ['pack.sprint.cells * 4.2 V > 25 V', true],
    ['pack.sprint.capacity * pack.sprint.discharge >= 55 A', true],
    ['0.1 + 0.2 = 0.3', true],
    ['level.blend-to = 0.3', true],
    ['level.blend-to * 3 <= 90 %', true],
    ['gyro.filter.1.kind is none', true],
    ['gyro.filter.1.kind is butterworth', false],
    ['gyro.filter.1.kind is not butterworth', true],
    ['receiver.inverted is on', true],
    ['receiver.inverted is not on', false],
    ['receiver.reversed has yaw', true],
    ['receiver.reversed has pitch', false],
    ['gyro.rate is set', true],
    ['gyro.rate is missing', false],
    ['receiver.link is set', false],
    ['receiver.link is missing', true],
  ];
  for (const [condition, isTrue] of cases) {
    it(`${condition}: ${isTrue ? 'yes' : 'no'}`, () => assert.equal(told(condition), isTrue));
  }

  for (const condition of [
    'receiver.link is crsf',
    'receiver.link is not crsf',
    'receiver.needs has gyro-still',
    'control.rate > 1 Hz',
    'control.rate <= 1 Hz',
    'gyro.rate > 1 s',
    'gyro.rate = 8',
    'gyro.filter.1.cutoff > 1 Hz',
    'gyro.filter.1.cutoff <= 1 Hz',
    'gyro.rate / 0 > 1 Hz',
    'no.such != 5',
    'figure.no-such > 1',
  ]) {
    it(`${condition}: no, for something in it is missing or unknown`, () =>
      assert.equal(told(condition), false));
  }

  it('takes a default for a value where the script sets none', () => {
    assert.equal(told('receiver.centre = 1500 us'), true);
    assert.equal(told('receiver.centre is set'), false);
    assert.equal(told('derivative.input is turning-rate'), true);
  });

  it('knows a broken value as set', () => assert.equal(told('gyro.filter.1.cutoff is set'), true));

  for (const condition of [
    '',
    'gyro.rate',
    'gyro.rate > ',
    'gyro.rate > > 5',
    'gyro.rate ~ 5',
    'a > ]',
    'a > "b"',
    'a.b > 1,5',
  ]) {
    it(`"${condition}" is none, and says so when the rule is read`, () =>
      assert.throws(() => readCondition(condition), /is not/));
  }

  it('stands on expressions, which are those of scripts', () => {
    assert.equal(readExpressionText('min(a.b, 2 Hz) - c.d').kind, 'sum');
    assert.throws(() => readExpressionText('[1]'), /not an expression/);
    assert.throws(() => readExpressionText(''), /not an expression/);
  });
});
