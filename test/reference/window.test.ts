import assert from 'node:assert/strict';
import {
  coherentGain,
  noiseBandwidth,
  type WindowName,
  windowGain,
  windowOf,
  windowOverlap,
} from '../../server/src/physics/window';
import { close } from '../support/close';
import { near } from '../support/near';

/** Gain, noise bandwidth in bins, loss of a tone between two bins in dB, highest side lobe in dB. */
const table: readonly (readonly [WindowName, number | null, number, number, number | null])[] = [
  ['hann', 0.5, 1.5, -1.4236, -31.5],
  ['hamming', 0.54, 1.3628, -1.7514, -42.7],
  ['bartlett', 0.5, 1.3333, -1.8242, -26.5],
  ['welch', null, 1.2, -2.2248, -21.3],
  ['blackman-harris', 0.358_75, 2.0044, -0.8256, -92],
  ['rectangular', 1, 1, -3.9224, -13.26],
  ['blackman', 0.42, 1.726_757, -1.0989, -58.12],
  ['flat top', 0.215_579, 3.770_246, -0.0098, null],
];

const decibels = (ratio: number) => 20 * Math.log10(ratio);

describe('windows', () => {
  it('have the figures of the table in Arm CMSIS-DSP 1.15.0, window_functions.h, after Heinzel, Rüdiger and Schilling (2002); the last three by SciPy 1.17.1', () => {
    for (const [name, gain, bandwidth, between, lobe] of table) {
      const window = windowOf(name, 1024);
      if (gain !== null) near(coherentGain(window), gain, 1e-3);
      near(noiseBandwidth(window), bandwidth, 1e-3);
      close([decibels(windowGain(window, 0.5))], [between], 1e-3);
      if (lobe !== null) close([highestLobe(window)], [lobe], 0.06);
    }
  });

  it('have the values of the tests of SciPy 1.17.1 (test_windows.py), periodic', () => {
    close(windowOf('hann', 6), [0, 0.25, 0.75, 1, 0.75, 0.25], 1e-15);
    const [first, second, third] = [
      0.188_255_099_070_633_2, 0.611_260_466_978_157_2, 0.950_484_433_951_209_5,
    ];
    close(windowOf('hann', 7), [0, first, second, third, third, second, first], 1e-14);
    close(windowOf('hamming', 6), [0.08, 0.31, 0.77, 1, 0.77, 0.31], 1e-15);
    close(windowOf('blackman', 6), [0, 0.13, 0.63, 1, 0.63, 0.13], 1e-15);
    const [end, low, high] = [-0.000_421_051, -0.051_263_156, 0.198_210_53];
    close(windowOf('flat top', 6), [end, low, high, 1, high, low], 1e-8);
  });

  it('Hann: 3 dB wide over 1.4382 bins (CMSIS-DSP), and alike to itself by 1/6 half a length on, by 0.6592 a quarter on (by SciPy 1.17.1)', () => {
    const window = windowOf('hann', 1024);
    close([decibels(windowGain(window, 1.4382 / 2))], [-3], 1e-3);
    near(windowOverlap(window, 512), 1 / 6, 1e-3);
    near(windowOverlap(window, 256), 0.6592, 1e-3);
  });
});

/** Past the first valley, in dB. */
function highestLobe(window: Float64Array): number {
  const gains = Array.from({ length: 400 }, (_, at) => windowGain(window, 0.5 + at / 50));
  const valley = gains.findIndex((gain, at) => gain < (gains[at - 1] ?? 0) && gain < (gains[at + 1] ?? 0));
  assert.ok(valley > 0);
  return decibels(Math.max(...gains.slice(valley)));
}
