import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { axisNames } from '../../../server/src/figures/axis-names';
import { craftOf } from '../../support/findings';
import {
  type PlainAxis,
  type PlainPlace,
  plainLoop,
  plainMargins,
  plainOvershoot,
  plainPlaces,
  rotorInertia,
} from '../../support/plain-loop';
import { type PlausibleCraft, plausibleCraft, scriptOf } from '../../support/plausible-craft';

/** Nearer to −1 than this, two reckonings may disagree on which side of it a loop lies. */
const onTheEdge = 0.04;
/** rad/s: a tenth of 400 deg/s. */
const call = (40 * Math.PI) / 180;

describe('a second, plain and slow reckoning of the loop', () => {
  it('finds the same place, margins and overshoot, or that it swings', () => {
    let [calm, swinging] = [0, 0];
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const places = plainPlaces(craft);
        fc.pre(places.length > 0);
        // With ten times the gains, most craft swing.
        const louder = { ...craft, gain: Math.min(1.6, 10 * craft.gain) };
        for (const [flown, axes] of [
          [craft, axisNames],
          [louder, ['roll'] as const],
        ] as const) {
          const view = new CraftView(craftOf(scriptOf(flown)), 'one');
          const inertia = rotorInertia(flown);
          for (const axis of axes) {
            const found = worstOf(flown, axis, places, inertia);
            if (found.nearest < onTheEdge || found.ahead < 0.003) continue;
            if (found.isCalm) calm += 1;
            else swinging += 1;
            holdFigures(view, axis, found);
            if (found.isCalm && found.phase > 15) holdOvershoot(view, flown, axis, found.place, inertia);
          }
        }
      }),
      { numRuns: 12, endOnFailure: true },
    );
    assert.ok(calm > 3 && swinging > 0, `${calm} calm, ${swinging} swinging`);
  }).timeout(60_000);
});

function worstOf(craft: PlausibleCraft, axis: PlainAxis, places: readonly PlainPlace[], inertia: number) {
  const integrators = craft.integralRate > 0 ? 2 : 1;
  const all = places
    .map((place) => ({
      place,
      ...plainMargins(plainLoop(craft, axis, place, inertia), craft.controlRate / 2, integrators),
    }))
    .sort((one, other) => signed(one) - signed(other));
  const [worst, next] = all;
  assert.ok(worst !== undefined);
  return { ...worst, ahead: next === undefined ? Number.POSITIVE_INFINITY : signed(next) - signed(worst) };
}

function signed({ isCalm, nearest }: { readonly isCalm: boolean; readonly nearest: number }): number {
  return isCalm ? nearest : -nearest;
}

function holdFigures(view: CraftView, axis: PlainAxis, found: ReturnType<typeof worstOf>): void {
  const figure = (id: string) => figureOf(view, `${axis}-${id}`);
  const told = JSON.stringify({ axis, found });
  if (!found.isCalm) {
    assert.ok(figure('swings') !== null, told);
    for (const id of ['phase-margin', 'gain-margin', 'overshoot', 'crossover'])
      assert.equal(figure(id), null, `${id} of ${told}`);
    return;
  }
  assert.equal(figure('swings'), null, told);
  const [phase, gain] = [figure('phase-margin'), figure('gain-margin')];
  assert.equal(phase?.place, found.place.name, told);
  assert.ok(Math.abs((phase?.likely ?? 0) - found.phase) < 1, `${phase?.likely}: ${told}`);
  if (found.gain < 15)
    assert.ok(Math.abs((gain?.likely ?? 0) / found.gain - 1) < 0.02, `${gain?.likely}: ${told}`);
}

function holdOvershoot(
  view: CraftView,
  craft: PlausibleCraft,
  axis: PlainAxis,
  place: PlainPlace,
  inertia: number,
): void {
  const over = 100 * plainOvershoot(craft, axis, place, inertia, call);
  const found = figureOf(view, `${axis}-overshoot`)?.likely;
  // What creeps on for longer than is looked at has no figure; it never shot over.
  if (found === undefined) assert.ok(over < 1, `${axis} ${place.name}: none and ${over}`);
  else assert.ok(Math.abs(found - over) < 2 + 0.08 * over, `${axis} ${place.name}: ${found} and ${over}`);
}
