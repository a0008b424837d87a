import { recordingTime } from '../../server/src/physics/record';
import { near } from '../support/near';

describe('logs', () => {
  it('333 000 sectors of 2352 bytes hold 74 minutes of two 16-bit channels at 44.1 kHz (compact disc, IEC 60908, from memory)', () => {
    near(recordingTime(333_000 * 2352, 44_100, 4), 74 * 60, 1e-9);
  });
});
