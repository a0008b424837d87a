import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { forwardOf } from '../../../server/src/figures/airframe';
import type { Figure } from '../../../server/src/figures/figure';
import { withheldIn } from '../../../server/src/figures/withheld';
import { craftOf } from '../../support/findings';
import { plainFlightPower } from '../../support/plain-drive';
import { plainLeast } from '../../support/plain-flight';
import { type PlausibleCraft, plausibleCraft, scriptOf } from '../../support/plausible-craft';
import { wholeCraftWith } from '../../support/whole-craft';

function figure(view: CraftView, id: string): Figure {
  const found = figureOf(view, id);
  assert.ok(found, id);
  return found;
}

function likelyWith(lines: readonly string[], id: string): number {
  return figure(wholeCraftWith(lines), id).likely;
}

function viewOf(craft: PlausibleCraft, ...lines: readonly string[]): CraftView {
  return new CraftView(craftOf(scriptOf(craft, ...lines)), 'one');
}

describe('flying forward', () => {
  it('takes the power, and has the best speeds, of a second, plain reckoning', () => {
    let flew = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const view = viewOf(craft);
        const speed = figureOf(view, 'range-speed')?.likely;
        const top = figureOf(view, 'top-speed')?.likely;
        const forward = forwardOf(view)?.value.likely;
        if (speed === undefined || top === undefined || forward === undefined) return;
        flew += 1;
        const { drag, advance, inflowRise } = forward;
        const mass = craft.mass + craft.packMass;
        // Drag as in the reference: 0.105 + 0.087 m by the area of five inches; 0.0135 m² at 1.5 kg, by the surface.
        const small = Math.min(1, craft.propeller / 0.127);
        const linear = (0.105 + 0.087 * mass) * small * small;
        assert.ok(Math.abs(drag.linear / linear - 1) < 1e-6);
        const area = 0.0135 * Math.cbrt(mass / 1.5) ** 2;
        assert.ok(Math.abs(drag.area / area - 1) < 1e-6);
        const air = { linear, area, advance, inflowRise };
        const power = (at: number) =>
          plainFlightPower(craft, air, at, 3.7 * craft.cells) ?? Number.POSITIVE_INFINITY;
        const cruise = figure(view, 'cruise-power').likely;
        assert.ok(Math.abs(cruise / power(speed) - 1) < 1e-3, `${cruise} and ${power(speed)}`);
        const best = plainLeast((at) => power(at) / at, Math.max(0.01, speed - 2), speed + 2);
        assert.ok(power(speed) / speed <= (power(best) / best) * 1.0005, `${speed} and ${best}`);
        assert.ok(Number.isFinite(power(top - 0.1)) && !Number.isFinite(power(top + 0.1)), `top ${top}`);
      }),
      { numRuns: 25, endOnFailure: true },
    );
    assert.ok(flew > 10, `${flew}`);
  }).timeout(60_000);

  it('gets half as far out as it flies in still air, and turns back with half of the charge', () => {
    const [range, reach, charge] = ['range', 'reach', 'turn-back-charge'].map((id) => likelyWith([], id));
    assert.ok(Math.abs((reach ?? 0) / (range ?? 1) - 0.5) < 1e-9);
    assert.ok(Math.abs((charge ?? 0) - 740) < 1e-9); // half of 80 % of 1850 mAh
    const windy = ['craft.wind = 6 m/s'];
    assert.ok(likelyWith(windy, 'reach') < (reach ?? 0));
    assert.ok(likelyWith(windy, 'turn-back-charge') < (charge ?? 0));
  });

  it('says in which wind it comes back, also where none is written', () => {
    const place = (...lines: readonly string[]) => figureOf(wholeCraftWith(lines), 'reach')?.place;
    assert.equal(place('craft.wind = 6 m/s'), 'in 6 m/s of wind');
    assert.equal(place(), 'in no wind');
  });

  it('says that it can’t come back against a wind that is faster than it', () => {
    const view = wholeCraftWith(['craft.wind = 39 m/s']);
    assert.equal(figureOf(view, 'reach'), null);
    const told = withheldIn(view, new Set(['reach'])).map(({ because }) => because);
    assert.match(
      told[0] ?? '',
      /^A wind of 39 m\/s is faster than the craft likely flies, [\d.]+ m\/s: it can’t come back/,
    );
  });

  it('tells an end in words where a wind may be too strong', () => {
    const top = figure(wholeCraftWith([]), 'top-speed');
    const reach = figure(wholeCraftWith([`craft.wind = ${(top.low + top.likely) / 2} m/s`]), 'reach');
    assert.equal(reach.lowWords, 'not at all');
  });

  it('is surer with a measured drag area', () => {
    const ratio = (lines: readonly string[]) => {
      const { low, high } = figure(wholeCraftWith(lines), 'top-speed');
      return high / low;
    };
    assert.ok(ratio(['craft.drag-area = 200 cm^2']) < ratio([]));
  });

  it('leans no more than the tilt limit lets it while it levels itself', () => {
    const top = likelyWith([], 'top-speed');
    assert.ok(likelyWith(['level.tilt-limit = 10 deg'], 'tilt-speed') < top);
    assert.equal(likelyWith(['level.tilt-limit = 85 deg'], 'tilt-speed'), top);
  });
});
