import type { SuddenCall } from '../../server/src/physics/step-response';

/** A call of 1 rad/s, not kicked, with nothing held back. */
export const plainCall: SuddenCall = {
  call: 1,
  isKicked: false,
  feedforward: 0,
  feedforwardCutoff: null,
  limits: {
    integral: Number.POSITIVE_INFINITY,
    derivative: Number.POSITIVE_INFINITY,
    command: Number.POSITIVE_INFINITY,
    rise: Number.POSITIVE_INFINITY,
    integralShare: 1,
  },
};
