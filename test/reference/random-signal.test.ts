import { magnitude } from '../../server/src/physics/complex';
import {
  butterworthLowpass,
  chainResponse,
  type DigitalFilter,
  firstOrderLowpass,
} from '../../server/src/physics/filter';
import { controller, filteredTone } from '../../server/src/physics/loop';
import {
  binPowers,
  noiseCommand,
  noiseSums,
  powerGains,
  rmsOf,
} from '../../server/src/physics/random-signal';
import { close } from '../support/close';
import { near } from '../support/near';

/** From 0 Hz, so many bins so far apart. */
const bins = (count: number, width: number) => Float64Array.from({ length: count }, (_, at) => at * width);
const white = (count: number) => new Float64Array(count).fill(1);

/** The whole of a density behind filters. */
function powerBehind(filters: readonly DigitalFilter[], half: number): number {
  const frequencies = bins(4001, half / 4000);
  const [gains = white(0)] = powerGains([{ filters }], frequencies);
  return rmsOf(binPowers(frequencies, gains, 0)) ** 2;
}

describe('noise behind filters (output density is |H|² times that before, Oppenheim and Schafer)', () => {
  it('white through a first-order low-pass has the bandwidth (fs/2) w / (1 + w), w = tan(π fc / fs): 1.5692 fc at 1/100 of the rate (closed form of Σ h²)', () => {
    for (const [cutoff, rate] of [
      [40, 4000],
      [120, 4000],
      [700, 3200],
    ] as const) {
      const warped = Math.tan((Math.PI * cutoff) / rate);
      const closed = ((rate / 2) * warped) / (1 + warped);
      near(powerBehind([firstOrderLowpass(cutoff, rate)], rate / 2), closed, 1e-4);
    }
  });

  it('and up to f what the analogue one has, fc atan(f / fc), where the rate is far above both (closed form)', () => {
    const filter = firstOrderLowpass(50, 1e6);
    near(powerBehind([filter], 400), 50 * Math.atan(8), 1e-4);
  });

  it('white through Butterworth of order 2 has the bandwidth π fc / (2 √2) = 1.1107 fc (closed form)', () => {
    near(powerBehind([butterworthLowpass(100, 1e6)], 100_000), (100 * Math.PI) / (2 * Math.SQRT2), 1e-3);
  });

  it('two filters one after the other multiply their gains (definition)', () => {
    const [one, other] = [firstOrderLowpass(80, 4000), butterworthLowpass(200, 4000)];
    const frequencies = bins(200, 10);
    const [both = white(0), ...each] = powerGains(
      [[one, other], [one], [other]].map((filters) => ({ filters })),
      frequencies,
    );
    close(
      both,
      [...frequencies].map((_, at) => (each[0]?.[at] ?? 0) * (each[1]?.[at] ?? 0)),
      1e-12,
    );
  });
});

describe('power between two frequencies', () => {
  it('is the trapezoid over the bins between: 2, 4 and 8 (unit²/Hz) 3 Hz apart hold 27 (by hand)', () => {
    const powers = binPowers([1, 4, 7, 10], [100, 2, 4, 8], 4);
    close(powers, [0, 3, 12, 12], 1e-12);
    near(rmsOf(powers), Math.sqrt(27), 1e-12);
    close(binPowers([1, 4, 7, 10], [100, 2, 4, 8], 4, 7), [0, 3, 6, 0], 1e-12);
  });
});

describe('the command that noise comes to', () => {
  const frequencies = bins(300, 1).map((frequency) => frequency + 20);
  const gyroFilters = [butterworthLowpass(110, 4000)];
  const derivativeFilters = [firstOrderLowpass(90, 3200)];

  it('is the sum of its powers times the gain of filters and controller squared, with any gains (∫ S |H|² df)', () => {
    const [seen = white(0)] = powerGains([{ filters: gyroFilters }], frequencies);
    const powers = binPowers(frequencies, white(300), 20).map((power, at) => power * (seen[at] ?? 0));
    const derived = [...frequencies].map((frequency) =>
      chainResponse({ filters: derivativeFilters }, frequency),
    );
    const sums = noiseSums(frequencies, powers, {
      re: Float64Array.from(derived, ({ re }) => re),
      im: Float64Array.from(derived, ({ im }) => im),
    });
    for (const gains of [
      { proportional: 0.03, integral: 0.2, derivative: 0.0004 },
      { proportional: 0.01, integral: 3, derivative: 0.002 },
      { proportional: 0.05, integral: 0, derivative: 0 },
    ]) {
      const each = [...frequencies].map((frequency) =>
        magnitude(controller(gains, filteredTone({ gyroFilters, derivativeFilters }, frequency))),
      );
      const plain = binPowers(
        frequencies,
        each.map((gain) => gain ** 2),
        20,
      );
      near(noiseCommand(gains, sums), rmsOf(plain), 1e-9);
    }
  });
});
