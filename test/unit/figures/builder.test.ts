import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import type { Figure } from '../../../server/src/figures/figure';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

const racer = [
  'board.profile = heron',
  'craft.mass = 212 g',
  'motor.kv = 2900 rpm/V',
  'esc.signal = dshot300',
  'esc.speed-feedback = on',
  'control.rate = 3.2 kHz',
  'pack.sprint.chemistry = lipo',
  'pack.sprint.cells = 6',
  'pack.sprint.capacity = 550 mAh',
  'pack.sprint.discharge = 90 C',
  'pack.sprint.mass = 96 g',
  'power.land-cell = 3.3 V',
  'power.current-scale = 10 mV/A',
  'wire.receiver.current = 90 mA',
  'receiver.supply = 5 V',
  'wire.buzzer.supply = 5 V',
  'wire.camera.supply = 9 V',
  'wire.camera.current = 0.2 A',
  'wire.battery-lead.gauge = 14',
  'wire.battery-lead.length = 150 mm',
  'wire.battery-lead.current = 45 A',
];

function figure(id: string, lines: readonly string[] = racer, pack: string | null = 'sprint'): Figure | null {
  return figureOf(new CraftView(craftOf(lines.join('\n')), pack), id);
}

describe('figures of the build', () => {
  const expected: readonly (readonly [id: string, likely: number, unit: string])[] = [
    ['pack-full-voltage', 25.2, 'V'],
    ['pack-nominal-voltage', 22.2, 'V'],
    ['pack-land-voltage', 19.8, 'V'],
    ['pack-energy', 12.21, 'Wh'],
    ['pack-current-limit', 49.5, 'A'],
    ['divider-at-full-pack', 25.2 / 11, 'V'],
    ['pack-input-limit', 36.3, 'V'],
    ['current-sensor-limit', 330, 'A'],
    ['motor-signal-time', 53.3333 + 10 + 30 + 56, 'us'],
    ['control-period', 312.5, 'us'],
    ['no-load-speed', 73_080, 'rpm'],
    ['flying-mass', 308, 'g'],
    ['five-volt-load', 0.09, 'A'],
    ['camera-rail-load', 0.2, 'A'],
    ['battery-lead-drop', 2 * 0.15 * 8.2841e-3 * 45, 'V'],
  ];
  for (const [id, likely, unit] of expected) {
    it(`${id} is ${likely.toPrecision(4)} ${unit}`, () => {
      const found = figure(id);
      assert.ok(found !== null);
      near(found.likely, likely, 1e-5);
      assert.equal(found.unit, unit);
      assert.ok(found.low <= found.likely && found.likely <= found.high);
      assert.ok(found.why.length > 3);
    });
  }

  it('each figure is left out where an input is missing', () => {
    for (const [id] of expected) assert.equal(figure(id, ['craft.name = "Sandpiper"'], null), null, id);
  });

  it('a full cell of the script goes before that of the chemistry', () => {
    near(figure('pack-full-voltage', [...racer, 'pack.sprint.full-cell = 4.1 V'])?.likely ?? 0, 24.6, 1e-9);
  });

  it("resistors of the script go before the board's, and the board's are told as assumed", () => {
    const own = ['power.divider-upper = 20 kohm', 'power.divider-lower = 2.5 kohm'];
    near(figure('divider-at-full-pack', [...racer, ...own])?.likely ?? 0, 2.8, 1e-9);
    assert.match(figure('divider-at-full-pack')?.assumed.join() ?? '', /board's profile/);
  });

  it('what a rail leaves out is told as assumed, with a span that has no end', () => {
    assert.match(figure('five-volt-load')?.assumed.join() ?? '', /buzzer/);
    assert.equal(figure('five-volt-load')?.highWords, 'unknown');
  });

  it('a pulse signal takes as long as its longest pulse', () => {
    near(figure('motor-signal-time', ['esc.signal = eighth-pulse'], null)?.likely ?? 0, 250, 1e-9);
  });
});
