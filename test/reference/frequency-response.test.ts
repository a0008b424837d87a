import assert from 'node:assert/strict';
import { CrossSpectra, crossSpectra } from '../../server/src/physics/cross-spectrum';
import {
  coherenceByChance,
  coherenceError,
  frequencyResponse,
  openOfClosed,
  responseByInstrument,
  responseError,
  sizeAndPhase,
} from '../../server/src/physics/frequency-response';
import { usualWelch, welch } from '../../server/src/physics/welch';
import { close } from '../support/close';
import { near } from '../support/near';

const asked = [1, -2, 3, 0, 2, -1, -3, 2, 1, 4, -2, -1, 0, 3, -4, 1, 2, -1, 0, 2, -3, 1, 4, -2];
const error = [1, -1, 0, 2, -2, 1, 0, -1, 1, 0, -1, 2, -1, 0, 1, -2, 1, 1, -1, 0, 2, -1, 0, -1];
const eights = usualWelch(1, 8);

/** Of 24 samples two taps late, and a quarter of an error. */
function came(share: number): readonly number[] {
  return asked.map(
    (_, at) => 0.5 * (asked[at - 1] ?? 0) + 0.25 * (asked[at - 2] ?? 0) + (share * (error[at] ?? 0)) / 4,
  );
}

describe('spectra between signals', () => {
  it('are those of 24 samples, two taps and an error (NumPy 2.4.6 and SciPy 1.17.1 on them)', () => {
    const spectra = crossSpectra([asked, came(1)], eights);
    close(spectra.power(0), [0.574_102_9, 5.228_560_6, 11.869_526_2, 11.218_867_2, 5.870_465_4], 1e-6);
    close(spectra.power(1), [0.310_950_7, 2.313_958_7, 4.029_921_8, 3.281_973_6, 0.951_414], 1e-6);
    const { re, im } = spectra.between(0, 1);
    close(re, [-0.069_312_5, 0.091_912_7, -3.042_973_8, -4.418_367_9, -1.953_752_3], 1e-6);
    close(im, [0, -3.177_166_5, -5.075_867_3, -2.906_747_5, 0], 1e-6);
    close(spectra.between(1, 0).re, re, 1e-12);
    close(
      spectra.between(1, 0).im,
      im.map((one) => -one),
      1e-12,
    );
    const { re: a, im: b, coherence } = frequencyResponse(spectra, 0, 1);
    const size = a.map((one, bin) => Math.hypot(one, b[bin] ?? 0));
    close(size, [0.120_731_8, 0.607_910_3, 0.498_597_6, 0.471_418, 0.332_810_5], 1e-6);
    close(coherence, [0.026_911_7, 0.835_036_6, 0.732_212_6, 0.759_672_4, 0.683_434_5], 1e-6);
  });

  it('lose coherence without any noise where segments are short (as above)', () => {
    const spectra = crossSpectra([asked, came(0)], eights);
    close(spectra.power(1), [0.300_926_9, 2.307_294_3, 3.285_054, 1.633_833_6, 0.548_376_2], 1e-6);
    const { coherence } = frequencyResponse(spectra, 0, 1);
    close(coherence, [0.016_459_1, 0.856_409_7, 0.724_065, 0.680_120_4, 0.927_719_8], 1e-6);
  });

  it('of a signal with itself are its density (SciPy 1.17.1, TestCSD); with its mirror, all is coherent (TestCoherence)', () => {
    const sixteen = Array.from({ length: 16 }, (_, at) => (at % 8 === 0 ? 1 : 0));
    const { re, im } = crossSpectra([sixteen, sixteen], eights).between(0, 1);
    close(re, [...welch(sixteen, eights).density], 1e-12);
    close(im, [0, 0, 0, 0, 0], 1e-12);
    const some = asked.slice(0, 20);
    const tens = usualWelch(1, 10);
    for (const sign of [1, -1])
      close(
        frequencyResponse(crossSpectra([some, some.map((one) => sign * one)], tens), 0, 1).coherence,
        [1, 1, 1, 1, 1, 1],
        1e-12,
      );
  });

  it('leave a segment out in which a cell of any signal says nothing', () => {
    const spectra = new CrossSpectra(eights, 2);
    assert.equal(spectra.add([asked, asked.with(3, Number.NaN)], 0), false);
    assert.equal(spectra.add([asked, asked.with(3, Number.NaN)], 8), true);
    assert.equal(spectra.segments, 1);
  });

  it('tell two tones apart from noise, 45° and 90° late (MathWorks, Cross Spectrum and Magnitude-Squared Coherence)', () => {
    const random = deviates(5);
    const turn = 2 * Math.PI;
    const rate = 1000;
    const x: number[] = [];
    const y: number[] = [];
    for (let at = 0; at < rate; at += 1) {
      const time = at / rate;
      x.push(Math.cos(turn * 100 * time) + Math.sin(turn * 200 * time) + 0.5 * random());
      y.push(
        0.5 * Math.cos(turn * 100 * time - Math.PI / 4) +
          0.35 * Math.sin(turn * 200 * time - Math.PI / 2) +
          0.5 * random(),
      );
    }
    const setup = { ...usualWelch(rate, 100), window: 'hamming', overlap: 80 } as const;
    const response = frequencyResponse(crossSpectra([x, y], setup), 0, 1);
    for (const [bin, late] of [
      [10, 45],
      [20, 90],
    ] as const) {
      assert.ok((response.coherence[bin] ?? 0) > 0.8);
      const phase = (180 / Math.PI) * Math.atan2(response.im[bin] ?? 0, response.re[bin] ?? 0);
      assert.ok(Math.abs(phase + late) < 10, `${phase}`);
    }
  });
});

describe('a frequency response', () => {
  it('falls by 360 f d / rate degrees for a wait of d samples, without a jump', () => {
    const random = deviates(9);
    const x = Array.from({ length: 4000 }, random);
    const response = frequencyResponse(
      crossSpectra([x.slice(3), x.slice(0, -3)], usualWelch(100, 200)),
      0,
      1,
    );
    const bins = [1, 10, 33, 50, 80].map((bin) => bin);
    const { phase, size } = sizeAndPhase(response);
    close(
      bins.map((bin) => (180 / Math.PI) * ((phase[bin] ?? 0) - (phase[0] ?? 0))),
      bins.map((bin) => (-360 * (bin / 2) * 3) / 100),
      4,
    );
    near(size[10] ?? 0, 1, 0.05);
  });

  it('has the coherence of its signal beside its noise: 1/(1 + noise/signal) (any textbook), and scatters as it says', () => {
    const random = deviates(3);
    const setup = usualWelch(1, 64);
    for (const [ratio, share] of [
      [1.5, 0.6],
      [4, 0.8],
    ] as const) {
      const x = Array.from({ length: 60_000 }, random);
      const y = x.map((one) => one + random() / Math.sqrt(ratio));
      const { coherence, re } = frequencyResponse(crossSpectra([x, y], setup), 0, 1);
      near(coherence.slice(2, 31).reduce((sum, one) => sum + one, 0) / 29, share, 0.02);
      const off = re.slice(2, 31).map((one) => (one - 1) ** 2);
      const scatter = Math.sqrt(off.reduce((sum, one) => sum + one, 0) / 29);
      // 1874 segments that share halves are as good as some 1780.
      near(scatter, responseError(share, 1780), 0.35);
    }
  });

  it('is off by chance as much as Bendat and Piersol say (from memory)', () => {
    near(responseError(0.6, 16), 0.1443, 1e-3);
    near(responseError(0.8, 16), 0.0884, 1e-3);
    near(responseError(0.9, 30), 0.043, 2e-3);
    near(coherenceError(0.6, 16), 0.1826, 1e-3);
  });

  it('has a coherence by chance below Beta(1, n − 1) says (the Rust crate dsmc 0.13.0)', () => {
    close(
      [4, 8, 16, 32, 64].map((averages) => coherenceByChance(averages, 0.95)),
      [0.6316, 0.3482, 0.181, 0.0921, 0.0464],
      1e-4,
    );
    assert.equal(coherenceByChance(1, 0.95), 1);
  });
});

describe('a part of a closed loop', () => {
  it('is found by an instrument where noise in the loop leads astray what leans on its input alone (Söderström and Stoica; the loop is ours)', () => {
    const random = deviates(11);
    const wanted: number[] = [];
    const told: number[] = [];
    const turns: number[] = [];
    let [rate, drift] = [0, 0];
    for (let at = 0; at < 80_000; at += 1) {
      const call = 3 * random();
      drift = 0.7 * drift + 3 * random();
      const seen = rate + drift;
      const command = 0.4 * (call - seen);
      wanted.push(call);
      told.push(command);
      turns.push(seen);
      rate = 0.8 * rate + 0.5 * command;
    }
    const setup = usualWelch(1, 64);
    const spectra = crossSpectra([wanted, told, turns], setup);
    const byInstrument = responseByInstrument(spectra, 0, 1, 2);
    const direct = frequencyResponse(spectra, 1, 2);
    const bin = 6;
    const turn = (2 * Math.PI * bin) / 64;
    // 0.5 z⁻¹ / (1 − 0.8 z⁻¹), and −1/controller.
    const [re, im] = [0.5 * Math.cos(turn), -0.5 * Math.sin(turn)];
    const [c, d] = [1 - 0.8 * Math.cos(turn), 0.8 * Math.sin(turn)];
    const truth = { re: (re * c + im * d) / (c * c + d * d), im: (im * c - re * d) / (c * c + d * d) };
    const off = (one: { re: readonly number[]; im: readonly number[] }) =>
      Math.hypot((one.re[bin] ?? 0) - truth.re, (one.im[bin] ?? 0) - truth.im) /
      Math.hypot(truth.re, truth.im);
    const scatter = (byInstrument.scatter[bin] ?? 0) / Math.sqrt(2370);
    assert.ok(off(byInstrument) < 4 * scatter && scatter < 0.1, `${off(byInstrument)}, ${scatter}`);
    assert.ok(off(direct) > 10 * scatter);
  });

  it('is all of it T/(1 − T): ωc/s e^(−sT) at 20 Hz with 5 ms comes back (arithmetic)', () => {
    const table = [
      [2, 1.001_28, -5.735, 10],
      [5, 1.007_95, -14.412, 4],
      [10, 1.030_88, -29.355, 2],
      [15, 1.065_09, -45.377, 1.333_33],
      [20, 1.101_34, -63, 1],
      [30, 1.102_33, -103.614, 0.666_67],
      [40, 0.914_48, -145.585, 0.5],
      [50, 0.666_67, -180, 0.4],
    ] as const;
    const at = (of: (angle: number) => number) =>
      table.map(([, size, phase]) => size * of((phase * Math.PI) / 180));
    const open = sizeAndPhase({
      frequencies: table.map(([frequency]) => frequency),
      ...openOfClosed({ re: at(Math.cos), im: at(Math.sin) }),
    });
    for (const [index, [frequency, , , size]] of table.entries()) {
      near(open.size[index] ?? 0, size, 1e-3);
      near((180 / Math.PI) * (open.phase[index] ?? 0), -90 - 360 * frequency * 0.005, 1e-3);
    }
  });
});

/** Normal deviates, the same each time. */
function deviates(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
