import { overJitter, toneBetween } from '../../server/src/physics/tone';
import { toneBandwidth, usualWelch, welch } from '../../server/src/physics/welch';
import { close } from '../support/close';

describe('a tone between bins', () => {
  it('of 100.3 Hz and amplitude 1 in 1000 samples of a second is found where it is, by a Hann window (by NumPy 2.4.6)', () => {
    const tone = Array.from({ length: 1000 }, (_, at) => Math.cos((2 * Math.PI * 100.3 * at) / 1000));
    const setup = usualWelch(1000, 1000);
    const { density } = welch(tone, setup);
    const amplitude = (bin: number) => Math.sqrt(2 * toneBandwidth(setup) * (density[bin] ?? 0));
    const { offset, scale } = toneBetween(amplitude(99), amplitude(100), amplitude(101));
    close([100 + offset, scale * amplitude(100)], [100.3, 1], 1e-4);
  });

  it('lies to the left as it lies to the right, and in the middle where both neighbours are alike', () => {
    const { offset } = toneBetween(0.8, 1, 0.3);
    close([offset, toneBetween(0.3, 1, 0.8).offset], [-1 / 3, 1 / 3], 1e-12);
    close([toneBetween(0.5, 1, 0.5).offset, toneBetween(0.5, 1, 0.5).scale], [0, 1], 1e-12);
  });
});

describe('times that jitter', () => {
  it('make a noise so many dB below a tone (W. Kester, Analog Devices MT-007, from memory)', () => {
    close(
      [overJitter(100, 50e-6), overJitter(100, 100e-6), overJitter(300, 50e-6)],
      [30.06, 24.04, 20.52],
      0.01,
    );
  });
});
