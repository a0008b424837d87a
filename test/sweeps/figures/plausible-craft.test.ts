import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { axisNames, ofAxes } from '../../../server/src/figures/axis-names';
import type { Figure } from '../../../server/src/figures/figure';
import { craftOf } from '../../support/findings';
import { plausibleCraft, scriptOf } from '../../support/plausible-craft';

const ids = [
  'motor-lag',
  ...ofAxes('swings', 'crossover', 'phase-margin', 'gain-margin', 'delay-phase', 'overshoot', 'noise-gain'),
];

/** What somebody may have set besides, in a few ways. */
const settings = fc.constantFrom(
  [],
  ['derivative.input = error'],
  ['control.roll.feedforward = 0.001 %/(deg/s^2)', 'control.feedforward-cutoff = 40 Hz'],
  ['power.even-thrust = 100 %'],
  ['motor.thrust-shape = 0 % -> 0 %, 50 % -> 70 %, 100 % -> 100 %'],
  ['control.when.high-throttle.from = 50 %', 'control.when.high-throttle.proportional = 60 %'],
  ['motor.output-limit = 70 %', 'motor.idle = 6 %', 'control.roll.limit = 20 %'],
  [
    'esc.speed-feedback = on',
    'gyro.filter.2.kind = follow-motors',
    'gyro.filter.2.tones = 2',
    'gyro.filter.2.from = 60 Hz',
    'gyro.filter.2.width = 15 Hz',
  ],
);

describe('loops of five hundred plausible craft', () => {
  it('are told by finite numbers within their spans; a loop that swings has no margins; no low end contradicts another', () => {
    let calm = 0;
    fc.assert(
      fc.property(plausibleCraft, settings, (craft, further) => {
        const view = new CraftView(craftOf(scriptOf(craft, ...further)), 'one');
        const figures = new Map(ids.map((id) => [id, figureOf(view, id)]));
        for (const figure of figures.values()) if (figure !== null) holdSpan(figure);
        for (const axis of axisNames) {
          const of = (what: string) => figures.get(`${axis}-${what}`) ?? null;
          const [swings, phase, gain] = [of('swings'), of('phase-margin'), of('gain-margin')];
          if (swings !== null) {
            for (const what of ['crossover', 'phase-margin', 'gain-margin', 'overshoot'])
              assert.equal(of(what), null, what);
          }
          if (phase === null || gain === null) continue;
          calm += 1;
          assert.ok(phase.likely > 0 && gain.likely > 1, `${phase.likely} ${gain.likely}`);
          assert.equal(phase.lowWords, gain.lowWords);
          assert.equal(phase.low <= 0, gain.low <= 1, `${phase.low} ${gain.low}`);
          assert.equal(phase.place, gain.place);
        }
      }),
      { numRuns: 500, endOnFailure: true },
    );
    assert.ok(calm > 100, `${calm} with margins`);
  }).timeout(60_000);
});

function holdSpan({ id, low, likely, high }: Figure): void {
  assert.ok([low, likely, high].every(Number.isFinite), `${id}: ${low} ${likely} ${high}`);
  assert.ok(0 <= low && low <= likely && likely <= high, `${id}: ${low} ${likely} ${high}`);
}
