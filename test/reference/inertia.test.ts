import { boxInertia, pointInertia, ringInertia, rodInertia } from '../../server/src/physics/inertia';
import { near } from '../support/near';

describe('moments of inertia', () => {
  it('two masses of 1 kg at 1 m about their middle: 2 kg m² (Σ m r², any textbook on mechanics)', () => {
    near(
      pointInertia([
        { mass: 1, distance: 1 },
        { mass: 1, distance: -1 },
      ]),
      2,
      1e-12,
    );
  });

  it('a cube of 1 kg and 1 m about its middle: 1/6 kg m² (table of any textbook on mechanics)', () => {
    near(boxInertia(1, 1, 1), 1 / 6, 1e-12);
  });

  it('a thin rod of 3 kg and 2 m about its middle: 1 kg m² (m l² / 12, any textbook on mechanics)', () => {
    near(rodInertia(3, 2), 1, 1e-12);
  });

  it('a thin ring of 2 kg and 3 m about its middle: 18 kg m² (m r², any textbook on mechanics)', () => {
    near(ringInertia(2, 3), 18, 1e-12);
  });
});
