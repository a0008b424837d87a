import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { axisNames } from '../../../server/src/figures/axis-names';
import { craftOf } from '../../support/findings';
import { type PlainPlace, plainPlaces } from '../../support/plain-drive';
import {
  type PlainAxis,
  plainLoop,
  plainMargins,
  plainOvershoot,
  rotorInertia,
} from '../../support/plain-loop';
import { louder, type PlausibleCraft, plausibleCraft, scriptOf } from '../../support/plausible-craft';

/** Nearer to −1 than this, two reckonings may disagree on which side of it a loop lies. */
const onTheEdge = 0.04;
/** rad/s: a tenth of 400 deg/s. */
const call = (40 * Math.PI) / 180;

describe('a second, plain and slow reckoning of the loop', () => {
  it('finds the same place, margins and overshoot, or that it swings', () => {
    let [calm, swinging] = [0, 0];
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        fc.pre(plainPlaces(craft).length > 0);
        // With ten times the gains, most craft swing.
        for (const found of [...holdCraft(craft, axisNames), ...holdCraft(louder(craft), ['roll'])]) {
          if (found.isCalm) calm += 1;
          else swinging += 1;
        }
      }),
      { numRuns: 12, endOnFailure: true },
    );
    assert.ok(calm > 3 && swinging > 0, `${calm} calm, ${swinging} swinging`);
  }).timeout(60_000);

  it('finds how far a craft shoots over that still comes back when nobody looks any more', () => {
    const [found] = holdCraft(slowToComeBack, ['yaw']);
    assert.ok(found?.isCalm === true && found.phase > 70);
  }).timeout(60_000);

  it('finds how far a craft shoots over that may swing far above its crossover', () => {
    const [found] = holdCraft(nearSwingingFarAbove, ['yaw']);
    assert.ok(found?.isCalm === true && found.crossover < 1 && found.gain < 1.6);
  }).timeout(60_000);
});

/** Its yaw crosses at 0.8 Hz, and half as much gain more makes it swing far above that: few looks a second miss it. */
const nearSwingingFarAbove: PlausibleCraft = {
  propeller: 0.1857,
  thrustCoefficient: 0.1226,
  powerCoefficient: 0.0761,
  spacing: 0.4028,
  mass: 0.4126,
  packMass: 0.1768,
  speedConstant: 55.56,
  resistance: 0.1521,
  idleCurrent: 0.0401,
  lag: 0.0259,
  cells: 6,
  packResistance: 0.0235,
  inertia: { roll: 0.00695, pitch: 0.00903, yaw: 0.0132 },
  gain: 0.06866,
  integralRate: 3.494,
  derivativeTime: 0.02924,
  yawGain: 0.7,
  gyroRate: 4000,
  controlRate: 1000,
  gyroCutoff: 80,
  derivativeCutoff: 128.2,
};

/** Its yaw rises through the call within a second, and takes four more to come back by a tenth of it. */
const slowToComeBack: PlausibleCraft = {
  propeller: 0.254,
  thrustCoefficient: 0.141,
  powerCoefficient: 0.094,
  spacing: 0.4425,
  mass: 0.8126,
  packMass: 0.3482,
  speedConstant: 95.5,
  resistance: 0.0176,
  idleCurrent: 0.162,
  lag: 0.0382,
  cells: 3,
  packResistance: 0.0029,
  inertia: { roll: 0.0187, pitch: 0.0243, yaw: 0.0355 },
  gain: 0.0479,
  integralRate: 1.097,
  derivativeTime: 0.04,
  yawGain: 0.871,
  gyroRate: 1000,
  controlRate: 1000,
  gyroCutoff: 80.2,
  derivativeCutoff: 111,
};

/** Holds the figures of some axes to the plain ones, as far as they can be told apart; gives what was found. */
function holdCraft(craft: PlausibleCraft, axes: readonly PlainAxis[]): readonly ReturnType<typeof worstOf>[] {
  const places = plainPlaces(craft);
  const view = new CraftView(craftOf(scriptOf(craft)), 'one');
  const inertia = rotorInertia(craft);
  return axes.flatMap((axis) => {
    const found = worstOf(craft, axis, places, inertia);
    if (found.nearest < onTheEdge || found.ahead < 0.003) return [];
    holdFigures(view, axis, found);
    if (found.isCalm && found.phase > 15) holdOvershoot(view, craft, axis, found, inertia);
    return [found];
  });
}

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
  { place, crossover }: ReturnType<typeof worstOf>,
  inertia: number,
): void {
  // A slow integral creeps over late: both look as long as anybody waits for a craft to settle.
  const seconds = Math.max(4, 8 / crossover);
  const over = 100 * plainOvershoot(craft, axis, place, inertia, { call, seconds });
  const found = figureOf(view, `${axis}-overshoot`)?.likely;
  assert.ok(
    found !== undefined && Math.abs(found - over) < 2 + 0.08 * over,
    `${axis} ${place.name}: ${found} and ${over}`,
  );
}
