import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { carriedBy, carriedOnFull, carriedToLand } from '../../../server/src/figures/drive';
import { driveFigures } from '../../../server/src/figures/drive-figures';
import { hovering } from '../../../server/src/figures/drive-states';
import type { Figure } from '../../../server/src/figures/figure';
import { limitFigures } from '../../../server/src/figures/limit-figures';
import { craftOf } from '../../support/findings';
import { type PlausibleCraft, plausibleCraft, scriptOf } from '../../support/plausible-craft';

/** How much a pilot knows: all that was measured, or what sales pages tell. */
type Known = 'measured' | 'sales page';
const known = fc.constantFrom<Known>('measured', 'sales page');

/** What no sales page has. */
const measuredOnly =
  /^(motor\.(resistance|idle-current|response-time)|prop\.(thrust|power)-|pack\.one\.resistance)/;

function viewOf(craft: PlausibleCraft, how: Known): CraftView {
  const lines = scriptOf(craft).split('\n');
  if (how === 'measured') return new CraftView(craftOf(lines.join('\n')), 'one');
  const stator = 4400 * (craft.propeller / 0.0254) * 1e-3;
  const size = [`motor.stator-diameter = ${stator} mm`, `motor.stator-height = ${0.3 * stator} mm`];
  const told = [...lines.filter((line) => !measuredOnly.test(line)), ...size, 'pack.one.discharge = 80 C'];
  return new CraftView(craftOf(told.join('\n')), 'one');
}

const ids = [...driveFigures, ...limitFigures].map(({ id }) => id);

const isOpen = ({ lowWords, highWords }: Figure) => lowWords !== undefined || highWords !== undefined;

function holdSpan({ id, low, likely, high, lowWords, highWords }: Figure): void {
  for (const value of [low, likely, high]) assert.ok(Number.isFinite(value) && value >= 0, `${id} ${value}`);
  assert.ok(lowWords !== undefined || low <= likely, `${id}: ${low} to ${likely}`);
  assert.ok(highWords !== undefined || likely <= high, `${id}: ${likely} to ${high}`);
}

/** The figures of one craft are to lie above those of another, in what is likely and at the ends that have numbers. */
function holdAbove(one: CraftView, other: CraftView, ids: readonly string[]): void {
  for (const id of ids) {
    const [more, less] = [figureOf(one, id), figureOf(other, id)];
    if (more === null || less === null) continue;
    assert.ok(more.likely > less.likely, `${id}: ${more.likely} and ${less.likely}`);
    if (isOpen(more) || isOpen(less)) continue;
    assert.ok(more.low > less.low, `low end of ${id}: ${more.low} and ${less.low}`);
    assert.ok(more.high > less.high, `high end of ${id}: ${more.high} and ${less.high}`);
  }
}

const rising = ['hover-throttle', 'hover-current', 'hover-power', 'hover-speed', 'disc-loading'];
const falling = ['thrust-to-weight', 'thrust-to-weight-landing', 'minutes-to-landing', 'minutes-to-warning'];

describe('motors, propellers and packs of five hundred plausible craft', () => {
  it('have finite figures within their spans, and hover exactly where full throttle lifts more than the weight', () => {
    const counts = { hovering: 0, open: 0 };
    fc.assert(
      fc.property(plausibleCraft, known, (craft, how) => {
        const view = viewOf(craft, how);
        const figures = ids.flatMap((id) => figureOf(view, id) ?? []);
        for (const figure of figures) holdSpan(figure);
        const [hover, thrust] = [figureOf(view, 'hover-throttle'), figureOf(view, 'thrust-to-weight')];
        if (hover === null)
          assert.ok(thrust === null || thrust.likely < 1, `${thrust?.likely}, and no hover`);
        else {
          counts.hovering += 1;
          assert.ok(thrust !== null && thrust.likely >= 1 && hover.likely <= 100);
          // Where the hover may be out of reach, full throttle may lift less than the weight.
          if (hover.highWords !== undefined) {
            counts.open += 1;
            assert.ok(thrust.low < 1, `${thrust.low}`);
          }
        }
      }),
      { numRuns: 500, endOnFailure: true },
    );
    assert.ok(counts.hovering > 400 && counts.open > 0, JSON.stringify(counts));
  }).timeout(120_000);

  it('hover with less throttle the more thrust there is for the weight: a heavier craft with more, better blades with less', () => {
    fc.assert(
      fc.property(
        plausibleCraft,
        known,
        fc.double({ min: 1.05, max: 1.4, noNaN: true }),
        (craft, how, by) => {
          const view = viewOf(craft, how);
          const heavier = viewOf({ ...craft, mass: by * craft.mass }, how);
          holdAbove(heavier, view, rising);
          holdAbove(view, heavier, falling);
          if (how === 'sales page') return;
          const better = viewOf({ ...craft, thrustCoefficient: by * craft.thrustCoefficient }, how);
          holdAbove(view, better, ['hover-throttle', 'hover-current', 'hover-power', 'hover-speed']);
          holdAbove(better, view, falling);
        },
      ),
      { numRuns: 500, endOnFailure: true },
    );
  }).timeout(120_000);

  it('hover with less throttle the fuller the pack is', () => {
    let compared = 0;
    fc.assert(
      fc.property(plausibleCraft, known, (craft, how) => {
        const view = viewOf(craft, how);
        const packs = [carriedToLand, carriedBy, carriedOnFull].flatMap((of) => of(view)?.value.likely ?? []);
        packs.sort((one, other) => one.drive.openVoltage - other.drive.openVoltage);
        const shares = packs.map((carried) => ({
          volts: carried.drive.openVoltage,
          share: hovering(carried)?.throttle ?? Number.POSITIVE_INFINITY,
        }));
        for (const [index, { volts, share }] of shares.entries()) {
          const fuller = shares[index + 1];
          if (fuller === undefined || !Number.isFinite(fuller.share) || fuller.volts - volts < 1e-6) continue;
          compared += 1;
          assert.ok(share > fuller.share, `${share} at ${volts} V, ${fuller.share} at ${fuller.volts} V`);
        }
      }),
      { numRuns: 500, endOnFailure: true },
    );
    assert.ok(compared > 500, `${compared}`);
  }).timeout(120_000);
});
