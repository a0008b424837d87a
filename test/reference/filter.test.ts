import assert from 'node:assert/strict';
import { magnitude } from '../../server/src/physics/complex';
import {
  butterworthLowpass,
  byRate,
  chainDelay,
  chainGain,
  chainPhase,
  chainResponse,
  type DigitalFilter,
  firstOrderLowpass,
  folded,
  gainAt,
  groupDelay,
  lowpass,
  lowpassCorner,
  notch,
  notchPlace,
  passThrough,
  phaseAt,
} from '../../server/src/physics/filter';
import { near } from '../support/near';

function holds(
  { b, a }: DigitalFilter,
  expectedB: readonly number[],
  expectedA: readonly number[],
  share: number,
) {
  for (const [index, value] of expectedB.entries()) near(b[index] ?? Number.NaN, value, share);
  for (const [index, value] of expectedA.entries()) near(a[index] ?? Number.NaN, value, share);
}

const degrees = (angle: number) => (angle * 180) / Math.PI;

describe('low-pass filters', () => {
  it('first order at 0.3 of half the rate (SciPy 1.17.1, test_filter_design.py, TestButter.test_degenerate)', () => {
    const gain = 0.337_540_151_883_546_9;
    holds(firstOrderLowpass(0.3, 2), [gain, gain], [-0.324_919_696_232_906_3], 1e-13);
  });

  it('are known by their coefficients: what was made at a corner has it there (SciPy’s, as above and below)', () => {
    const first = {
      rate: 2,
      b: [0.337_540_151_884, 0.337_540_151_884, 0],
      a: [-0.324_919_696_233, 0],
    } as const;
    const second = {
      rate: 8000,
      b: [0.001_460_316_306, 0.002_920_632_612, 0.001_460_316_306],
      a: [-1.889_033_079_395, 0.894_874_344_617],
    } as const;
    assert.equal(lowpassCorner(first).order, 'first');
    near(lowpassCorner(first).cutoff, 0.3, 1e-9);
    assert.equal(lowpassCorner(second).order, 'second');
    near(lowpassCorner(second).cutoff, 100, 1e-6);
  });

  it('that are notches are known by their coefficients: 60 Hz, Q 30 at 200 Hz (SciPy, docstring of iirnotch)', () => {
    const place = notchPlace({
      rate: 200,
      b: [0.969_531_252_909, 0.599_203_267_453, 0.969_531_252_909],
      a: [0.599_203_267_453, 0.939_062_505_817],
    });
    near(place?.centre ?? 0, 60, 1e-6);
    near(place?.width ?? 0, 2, 1e-6);
  });

  it('Butterworth of order 2 (SciPy 1.17.1, scipy.signal.butter, run)', () => {
    const b = (value: number) => [value, 2 * value, value];
    holds(butterworthLowpass(100, 8000), b(0.001_460_316_306), [-1.889_033_079_395, 0.894_874_344_617], 1e-9);
    holds(butterworthLowpass(250, 8000), b(0.008_442_692_929), [-1.723_776_172_763, 0.757_546_944_479], 1e-9);
    holds(butterworthLowpass(100, 1000), b(0.067_455_273_889), [-1.142_980_502_54, 0.412_801_598_096], 1e-9);
    holds(butterworthLowpass(0.25, 2), b(0.097_631_072_938), [-0.942_809_041_582, 0.333_333_333_333], 1e-9);
  });

  it('of order 2 is the low-pass of the Audio EQ Cookbook at Q = 1/√2 (W3C Group Note, 2021)', () => {
    holds(
      lowpass(1000, Math.SQRT1_2, 48_000),
      [0.003_916_126_661],
      [-1.815_341_082_705, 0.831_005_589_347],
      1e-9,
    );
  });

  it('lose 3.0103 dB at the cutoff and turn by 45 and by 90 degrees (definition of the Butterworth filter)', () => {
    for (const [filter, turned] of [
      [firstOrderLowpass(120, 8000), -45],
      [butterworthLowpass(120, 8000), -90],
    ] as const) {
      near(20 * Math.log10(gainAt(filter, 120)), -3.0103, 1e-4);
      near(degrees(phaseAt(filter, 120)), turned, 1e-9);
      near(gainAt(filter, 1e-6), 1, 1e-9);
    }
  });

  it('delay an envelope by so much (SciPy 1.17.1, scipy.signal.group_delay, run)', () => {
    const slow = butterworthLowpass(100, 8000);
    for (const [frequency, microseconds] of [
      [1e-3, 2249.63],
      [25, 2381.05],
      [50, 2647.48],
      [100, 2253.11],
    ] as const)
      near(groupDelay(slow, frequency) * 1e6, microseconds, 1e-3);
    near(groupDelay(butterworthLowpass(250, 8000), 1e-3) * 1e6, 897.42, 1e-3);
    near(groupDelay(butterworthLowpass(100, 1000), 1e-3) * 1e6, 2176.25, 1e-3);
  });

  it('come near their analogue delay where the rate is high: 1/ωc, √2/ωc (any textbook)', () => {
    near(groupDelay(firstOrderLowpass(100, 1e6), 1e-3) * 1e6, 1591.549, 1e-3);
    near(groupDelay(butterworthLowpass(100, 1e6), 1e-3) * 1e6, 2250.79, 1e-3);
  });

  it('are refused at half the rate and beyond', () => {
    for (const make of [firstOrderLowpass, butterworthLowpass])
      for (const cutoff of [0, -1, 4000, 5000, Number.NaN])
        assert.throws(() => make(cutoff, 8000), RangeError);
  });
});

describe('notches', () => {
  it('at 0.06 of half the rate, Q 30 (SciPy 1.17.1, TestIIRNotch, values that match Matlab)', () => {
    holds(
      notch(0.06, 0.06 / 30, 2),
      [0.996_868_24, -1.958_421_9, 0.996_868_24],
      [-1.958_421_9, 0.993_736_47],
      2e-8,
    );
  });

  it('60 Hz at 200 Hz, Q 30 (the example of SciPy’s iirnotch, run)', () => {
    holds(
      notch(60, 2, 200),
      [0.969_531_252_909, 0.599_203_267_453],
      [0.599_203_267_453, 0.939_062_505_817],
      1e-9,
    );
  });

  it('let nothing through in the middle and 1/√2 at the edges (SciPy 1.17.1, TestIIRNotch)', () => {
    const filter = notch(0.3, 0.01, 2);
    assert.ok(gainAt(filter, 0.3) < 1e-10);
    for (const edge of [0.295, 0.305]) near(gainAt(filter, edge), Math.SQRT1_2, 1e-2);
    for (const far of [0.2, 0.4]) near(gainAt(filter, far), 1, 1e-2);
  });

  it('delay what is far below by 1/(Q ω0), here 226.897 µs at 8 kHz (SciPy 1.17.1, group_delay, run)', () => {
    near(groupDelay(notch(200, 200 / 3.5, 8000), 1e-3) * 1e6, 226.897, 5e-3);
  });

  it('turn a tone below by atan((x/Q)/(1−x²)) where the rate is high (analogue prototype, any textbook)', () => {
    const filter = notch(200, 200 / 3.5, 1e6);
    near(degrees(phaseAt(filter, 50)), -4.357, 1e-3);
    near(degrees(phaseAt(filter, 100)), -10.7843, 1e-3);
  });

  it('have a delay even at their centre, where no tone is left', () => {
    assert.ok(Number.isFinite(groupDelay(notch(200, 50, 8000), 200)));
  });
});

describe('filters one after the other', () => {
  const chain = { filters: [butterworthLowpass(250, 8000), notch(200, 60, 8000), passThrough(8000)] };

  it('multiply their gains and add their phases and delays (any textbook)', () => {
    const [first, second] = chain.filters;
    assert.ok(first && second);
    near(chainGain(chain, 90), gainAt(first, 90) * gainAt(second, 90), 1e-12);
    near(magnitude(chainResponse(chain, 90)), chainGain(chain, 90), 1e-12);
    near(chainPhase(chain, 90), phaseAt(first, 90) + phaseAt(second, 90), 1e-12);
    near(chainDelay(chain, 90), groupDelay(first, 90) + groupDelay(second, 90), 1e-12);
  });

  it('are asked once where one stands there again, and once for those that work equally often (definition)', () => {
    const [low, middle, late] = [lowpass(250, 1, 8000), notch(200, 60, 8000), lowpass(90, 1, 4000)];
    const [rates, asked]: [number[], DigitalFilter[]] = [[], []];
    const seen = byRate((rate) => {
      rates.push(rate);
      return 1 / rate;
    });
    const ask = (filter: DigitalFilter) => {
      asked.push(filter);
      return seen(filter);
    };
    const filters = [low, middle, middle, late];
    near(
      folded({ filters }, 0, ask, (all, one) => all + one),
      3 / 8000 + 1 / 4000,
      1e-12,
    );
    assert.deepEqual(
      [rates, asked],
      [
        [8000, 4000],
        [low, middle, late],
      ],
    );
  });

  it('delay by the slope of their phase: −dφ/dω (definition of the group delay)', () => {
    const [frequency, step] = [70, 1e-3];
    const slope = (chainPhase(chain, frequency + step) - chainPhase(chain, frequency - step)) / (2 * step);
    near(chainDelay(chain, frequency), -slope / (2 * Math.PI), 1e-6);
  });
});
