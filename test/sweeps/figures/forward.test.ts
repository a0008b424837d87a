import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';
import { type PlausibleCraft, plausibleCraft, scriptOf } from '../../support/plausible-craft';

function viewOf(craft: PlausibleCraft, ...lines: readonly string[]): CraftView {
  return new CraftView(craftOf(scriptOf(craft, ...lines)), 'one');
}

const ids = [
  'endurance-speed',
  'range-speed',
  'cruise-power',
  'range',
  'reach',
  'turn-back-charge',
  'top-speed',
  'tilt-speed',
];

describe('flying forward', () => {
  it('goes no less far with less drag and no farther with more wind, never below nothing, all within spans, of a hundred plausible craft', () => {
    fc.assert(
      fc.property(
        plausibleCraft,
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 0.0005, max: 0.05, noNaN: true }),
        (craft, wind, area) => {
          const lines = ['level.tilt-limit = 35 deg', `craft.wind = ${wind} m/s`];
          const view = viewOf(craft, ...lines);
          for (const id of ids) {
            const found = figureOf(view, id);
            if (found === null) continue;
            const { low, likely, high } = found;
            assert.ok([low, likely, high].every(Number.isFinite), id);
            assert.ok(0 <= low && low <= likely && likely <= high, `${id}: ${low} ${likely} ${high}`);
          }
          const reach = (...more: readonly string[]) =>
            figureOf(viewOf(craft, ...more), 'reach')?.likely ?? 0;
          const here = figureOf(view, 'reach')?.likely ?? 0;
          assert.ok(reach(`craft.wind = ${wind + 1} m/s`) <= here + 1e-6);
          const dragging = (by: number) => viewOf(craft, `craft.drag-area = ${10_000 * by} cm^2`);
          const [slim, wide] = [dragging(area), dragging(1.5 * area)];
          for (const id of ['range', 'top-speed', 'range-speed']) {
            const of = (one: CraftView) => figureOf(one, id)?.likely ?? 0;
            assert.ok(of(slim) >= of(wide) * (1 - 1e-4), id);
          }
        },
      ),
      { numRuns: 100, endOnFailure: true },
    );
  }).timeout(120_000);
});
