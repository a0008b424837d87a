import assert from 'node:assert/strict';
import {
  bitsPerByte,
  dividerError,
  type Framing,
  frameTime,
  recommendedError,
  speedTolerance,
} from '../../server/src/physics/serial';
import { near } from '../support/near';

const framing = (dataBits: number, parity: Framing['parity'], stopBits: number): Framing => ({
  dataBits,
  parity,
  stopBits,
});

describe('serial lines', () => {
  it('bits a byte: 8 data bits, even parity, 2 stop bits make 12 (Zephyr RTOS, drivers/input/input_sbus.c)', () => {
    assert.equal(bitsPerByte(framing(8, 'even', 2)), 12);
    assert.equal(bitsPerByte(framing(8, 'none', 1)), 10);
  });

  it('a frame of 25 such bytes at 100 000 baud takes 3 ms, under the 4 ms that the driver allows (same file)', () => {
    near(frameTime(25, framing(8, 'even', 2), 100_000), 3e-3, 1e-12);
  });

  it('the largest MAVLink 2 packet of 280 bytes takes 48.611 ms at 57 600 baud (size: mavlink crate, MAX_FRAME_SIZE)', () => {
    near(frameTime(280, framing(8, 'none', 1), 57_600), 48.6111e-3, 1e-6);
  });

  it('what a receiver tolerates (Atmel ATmega8A data sheet, table 24-2, per cent)', () => {
    // data and parity bits, slowest, fastest, recommended
    const table = [
      [5, 93.2, 106.67, 3.0],
      [6, 94.12, 105.79, 2.5],
      [7, 94.81, 105.11, 2.0],
      [8, 95.36, 104.58, 2.0],
      [9, 95.81, 104.14, 1.5],
      [10, 96.17, 103.78, 1.5],
    ] as const;
    for (const [bits, slowest, fastest, recommended] of table) {
      const shape = framing(bits, 'none', 1);
      const { slow, fast } = speedTolerance(shape);
      assert.ok(Math.abs(slow * 100 - slowest) < 0.011, `${bits} bits: ${slow}`);
      assert.ok(Math.abs(fast * 100 - fastest) < 0.011, `${bits} bits: ${fast}`);
      assert.equal(recommendedError(shape), recommended / 100);
    }
    assert.equal(recommendedError(framing(8, 'even', 2)), 0.015); // the parity bit counts as a ninth
    assert.equal(recommendedError(framing(12, 'none', 1)), null);
  });

  it('what a whole divider makes of a clock (Microchip and Atmel line speed tables)', () => {
    near(1 + dividerError(100e6, 115_000, 16), 115_740.7 / 115_000, 1e-6);
    near(1 + dividerError(100e6, 9600, 16), 9600.6 / 9600, 1e-5);
    near(1 + dividerError(1e6, 9600, 16), 8928.57 / 9600, 1e-6);
    assert.equal(dividerError(1.8432e6, 115_200, 16), 0);
    near(1 + dividerError(16e6, 115_200, 16), 111_111.1 / 115_200, 1e-6);
  });
});
