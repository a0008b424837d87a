import { freeSpaceLoss, freeSpaceRange, receivedPower } from '../../server/src/physics/radio-link';
import { near } from '../support/near';

describe('a path through free space (Recommendation ITU-R P.525-5, 20 log(4πd/λ))', () => {
  for (const [megahertz, metres, loss] of [
    [1, 1000, 32.4478],
    [1000, 1000, 92.4478],
    [2400, 1000, 100.052],
    [5800, 100, 87.7163],
    [5800, 1000, 107.7163],
    [5800, 5000, 121.6957],
  ] as const) {
    it(`${megahertz} MHz over ${metres} m loses ${loss} dB`, () => {
      near(freeSpaceLoss(metres, megahertz * 1e6), loss, 1e-5);
      near(freeSpaceRange(loss, megahertz * 1e6), metres, 1e-4);
    });
  }

  it('25 mW with 2 dBi on both ends over 1 km of 5800 MHz arrive as -89.737 dBm (Friis, by hand)', () => {
    near(receivedPower(13.9794, 4, freeSpaceLoss(1000, 5.8e9)), -89.737, 1e-5);
  });
});
