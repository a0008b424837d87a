import assert from 'node:assert/strict';
import { chainResponse, firstOrderLowpass, lowpass, notch } from '../../server/src/physics/filter';
import { alongFrequencies, respondingAlong } from '../../server/src/physics/filter-along';
import { near } from '../support/near';

const filters = [lowpass(250, Math.SQRT1_2, 8000), notch(200, 57.14, 8000), firstOrderLowpass(100, 8000)];

describe('filters and a wait along frequencies', () => {
  it('turn and weaken tones as butter, iirnotch and butter one after the other, 1.5 ms late (SciPy 1.17.1, scipy.signal.freqz, run)', () => {
    const table = [
      [10, 0.960_302_838_747, -0.260_232_634_383],
      [50, 0.241_359_120_748, -0.857_891_189_118],
      [90, -0.467_744_620_355, -0.557_589_976_801],
      [199, 0.011_589_378_88, 0.006_506_734_922],
      [400, 0.059_013_841_739, -0.061_623_049_687],
    ] as const;
    const { re, im } = alongFrequencies(
      filters,
      1.5e-3,
      table.map(([frequency]) => frequency),
    );
    for (const [place, [, real, imaginary]] of table.entries()) {
      near(re[place] ?? Number.NaN, real, 1e-8);
      near(im[place] ?? Number.NaN, imaginary, 1e-8);
    }
  });

  it('do at each frequency what the chain does there, with a notch that stands there twice, whatever was asked before (by the other computation)', () => {
    const frequencies = [5, 60, 180, 333, 3500];
    const twice = filters.flatMap((filter, place) => (place === 1 ? [filter, filter] : [filter]));
    const respond = respondingAlong(frequencies);
    respond([firstOrderLowpass(50, 1000)], 0);
    const { re, im } = respond(twice, 0);
    assert.equal(re.length, frequencies.length);
    for (const [place, frequency] of frequencies.entries()) {
      const one = chainResponse({ filters: twice }, frequency);
      near(re[place] ?? Number.NaN, one.re, 1e-9);
      near(im[place] ?? Number.NaN, one.im, 1e-9);
    }
  });
});
