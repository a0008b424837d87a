import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { axesOf } from '../../../server/src/figures/axis';
import { chainOf } from '../../../server/src/figures/filter-chain';
import { steeringTone } from '../../../server/src/figures/filter-figures';
import { magnitude } from '../../../server/src/physics/complex';
import { chainDelay, chainGain } from '../../../server/src/physics/filter';
import { openLoop } from '../../../server/src/physics/loop';
import type { FlownLoop } from '../../../server/src/recording/measured-flight';
import type { MeasuredNoise } from '../../../server/src/recording/measured-noise';
import type { MeasuredSpan } from '../../../server/src/recording/report';
import type { FoundValues } from '../../../server/src/sheet/find/answer';
import { find } from '../../../server/src/sheet/find/find';
import { loopShift, loopText, shiftedBy } from '../../../server/src/sheet/find/measured-loop';
import { measuredSentence } from '../../../server/src/sheet/find/measured-text';
import { movablesOf, write } from '../../../server/src/sheet/find/movable';
import { Tuning } from '../../../server/src/sheet/find/tuning';
import { wishFor } from '../../../server/src/sheet/find/wish';
import { setupLines } from '../../../server/src/sheet/find/work';
import { craftOf, findingsOf } from '../../support/findings';
import { near } from '../../support/near';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const wagtail = readFileSync('test/demo/wagtail.craft', 'utf8');
const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8');

const frequencies = Float64Array.from({ length: 120 }, (_, at) => 20 + 4 * at);

/** A little noise all over, and much of it at one frequency (Hz). */
function shaken(tone: number, moments: MeasuredNoise['moments'] = []): MeasuredNoise {
  const powers = frequencies.map((one) => 0.05 + (Math.abs(one - tone) <= 4 ? 60 : 0));
  return {
    name: 'made.csv',
    isSimulated: false,
    rate: 992,
    frequencies,
    axes: [{ axis: 'roll', powers, tones: [{ frequency: tone, above: 25 }] }],
    moments,
  };
}

function found(text: string, measured: MeasuredNoise | null): FoundValues {
  const craft = craftOf(text, club);
  const none = { told: null, reason: 'No recording was given.', advice: 'Give one.' };
  const wish = wishFor(craft, { packs: craft.packs().slice(0, 1) });
  const work = find(craft, wish, findingsOf(craft), findingsOf, {
    noise: measured === null ? none : { told: measured, basis: '' },
    loops: null,
  });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** Found once for all tests. */
let withoutNoise: FoundValues | null = null;

function unmeasured(): FoundValues {
  withoutNoise ??= found(wagtail, null);
  return withoutNoise;
}

/** % of throttle. */
function commandLeft({ proposals }: FoundValues, id: string): number {
  const proposal = proposals.find((one) => one.id === id) ?? assert.fail(id);
  return proposal.readings[0]?.measured?.command ?? assert.fail('not measured');
}

describe('values that are found by measured noise', () => {
  it('leave less of it from one proposal to the next, and say how much there is now and then', () => {
    const answer = found(wagtail, shaken(150));
    assert.deepEqual(
      answer.proposals.map(({ id }) => id),
      ['least-delay', 'middle', 'quietest'],
    );
    const [least, middle, quietest] = (['least-delay', 'middle', 'quietest'] as const).map((id) =>
      commandLeft(answer, id),
    );
    assert.ok(
      (least ?? 0) > (middle ?? 0) && (middle ?? 0) > (quietest ?? 0),
      `${least} ${middle} ${quietest}`,
    );
    const plain = unmeasured();
    assert.notDeepEqual(answer.proposals.at(-1)?.settings, plain.proposals.at(-1)?.settings);
    for (const [at, { delay, noise }] of answer.front.entries()) {
      const last = answer.front[at - 1];
      if (last !== undefined) assert.ok(delay > last.delay && noise < last.noise);
    }
    const [then] = answer.proposals[1]?.readings ?? [];
    assert.match(
      then === undefined ? '' : (measuredSentence(answer.nowReadings[0], then) ?? ''),
      /^Measured noise up to 496 Hz, rms behind the filters \(before them\): roll [\d.]+ → [\d.]+ \(11\.2\) deg\/s; with the gains [\d.]+ → [\d.]+ % of throttle; standing tone at 150 Hz about roll: [\d.]+ → [\d.]+ dB off\.$/,
    );
    assert.match(
      answer.measured ?? '',
      /^Weighed with the noise that made\.csv has .* from 20 to 496 Hz.*; above 496 Hz, half of the rate of its rows, nothing is known of it/,
    );
  });

  it('set a notch that may move on a tone that stands', () => {
    const notched = (text: string) =>
      `${text}\n[gyro.filter.3]\nkind = notch\ncentre = 260 Hz\nwidth = 30 Hz\n`;
    const answer = found(notched(sandmartin), shaken(330));
    const centre = answer.proposals
      .find(({ id }) => id === 'middle')
      ?.settings.find(({ path }) => path === 'gyro.filter.3.centre');
    const hertz = Number.parseFloat(centre?.after ?? '');
    assert.ok(Math.abs(hertz - 330) < 15, centre?.after ?? 'the notch stays');
  });

  it('say why there is none and how to get it, and are then those of the model', () => {
    const answer = unmeasured();
    assert.match(
      answer.measured ?? '',
      /^Weighed by the model of the motors’ tones alone, not by measured noise: no recording was given\. Give one\.$/,
    );
    for (const { readings } of answer.proposals)
      assert.ok(readings.every(({ measured }) => measured === null));
  });
});

describe('values that are found by what a flight shows of the loops', () => {
  const span = (likely: number, half: number, unit: string) => ({
    likely,
    low: likely - half,
    high: likely + half,
    unit,
  });
  const craft = craftOf(sandmartin, club);
  const modelled = () => {
    const placed = axesOf(new CraftView(craft, 'sprint'), 'roll')?.value ?? [];
    return placed.find(({ point }) => point.throttle === 'hover') ?? assert.fail('no hover');
  };
  const lagNow = 1e3 * modelled().axis.motorLag;
  const loops = (given: Partial<FlownLoop>) => ({
    name: 'made.csv',
    pack: 'sprint',
    axes: [{ axis: 'roll', delay: null, lag: null, crossover: null, ...given } as const],
  });

  it('have a lag and a strength at every place as they were measured in the hover', () => {
    const shift = loopShift(
      craft,
      loops({ lag: span(1.5 * lagNow, 0.5, 'ms'), crossover: span(20, 1, 'Hz') }),
    );
    const turned = shiftedBy(shift, 'roll', modelled()).axis;
    near(1e3 * turned.motorLag, 1.5 * lagNow, 1e-9);
    // Where it crossed over, the gain of the loop is 1.
    near(magnitude(openLoop(turned, 20)), 1, 1e-9);
    assert.equal(shiftedBy(shift, 'pitch', modelled()).axis.motorLag, modelled().axis.motorLag);
    assert.match(
      loopText({ told: loops({}), basis: '' }, shift),
      /^Margins are looked for with what made\.csv shows .*: a lag of [\d.]+ ms about roll \(model [\d.]+ ms\); [\d.]+ times the model’s strength about roll\./,
    );
  });

  it('have the measured wait only where the model’s lies outside of its span', () => {
    const waitOf = (delay: MeasuredSpan) => loopShift(craft, loops({ delay })).wait;
    assert.equal(waitOf(span(3, 2.5, 'ms')), 0);
    const { path } = modelled().axis;
    const model = path.delay + chainDelay({ filters: path.gyroFilters }, steeringTone);
    near(waitOf(span(8, 1, 'ms')), 8e-3 - model, 1e-9);
  });

  it('are nearer to swinging with motors that lag more, and the search keeps clear of that', () => {
    const wish = wishFor(craft, { packs: ['sprint'] });
    const marginWith = (lag: number) => {
      const shift = loopShift(craft, loops({ lag: span(lag, 0.5, 'ms') }));
      const tuning = new Tuning(craft.copied(), movablesOf(craft, wish), wish.packs, null, shift);
      return tuning.loops.narrowest(tuning.now).phase?.phase ?? assert.fail('no margin');
    };
    assert.ok(marginWith(3 * lagNow) < marginWith(lagNow) - 5);
  });
});

describe('measured noise behind a setup', () => {
  it('is what the filters leave of each bin once the setup is written, and weighs as its readings say', () => {
    const craft = craftOf(wagtail, club);
    const wish = wishFor(craft, { packs: craft.packs().slice(0, 1), moves: ['filters'] });
    const movables = movablesOf(craft, wish);
    const measured = shaken(150);
    const tuning = new Tuning(craft.copied(), movables, wish.packs, measured);
    const setups = fc.tuple(...movables.map(({ values }) => fc.nat(values.length - 1)));
    fc.assert(
      fc.property(setups, (setup) => {
        const written = craft.copied();
        write(written, setupLines(movables, setup));
        const filters = chainOf(new CraftView(written, wish.packs[0] ?? null), 'gyro')?.value.all(null) ?? [];
        const left = frequencies.map(
          (one, at) => (measured.axes[0]?.powers[at] ?? 0) * chainGain({ filters }, one) ** 2,
        );
        const rms = Math.sqrt(left.reduce((sum, power) => sum + power, 0));
        const [reading] = tuning.readings(setup);
        near(reading?.measured?.axes[0]?.left ?? 0, rms, 2e-3);
        near(tuning.weigh(setup, null).noise, reading?.noise ?? 0, 1e-9);
      }),
      { numRuns: 15 },
    );
  });

  it('has notches that follow the motors where these were, and without their speeds none', () => {
    const craft = craftOf(sandmartin, club);
    const wish = wishFor(craft);
    const leftOf = (moments: MeasuredNoise['moments']) => {
      const tuning = new Tuning(craft.copied(), movablesOf(craft, wish), wish.packs, shaken(220, moments));
      return tuning.readings(tuning.now)[0]?.measured?.axes[0]?.left ?? assert.fail('not measured');
    };
    const at = (...turns: readonly number[]) => [
      { turns, powers: [shaken(220).axes[0]?.powers ?? frequencies] },
    ];
    const without = leftOf([]);
    near(leftOf(at(400, 400, 400, 400)), without, 0.02);
    assert.ok(leftOf(at(220, 220, 220, 220)) < 0.5 * without);
    // One motor alone on the tone meets it with its own notch.
    assert.ok(leftOf(at(220, 350, 400, 410)) < 0.9 * without);
  });
});
