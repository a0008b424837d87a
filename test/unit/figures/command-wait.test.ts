import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

const loop = [
  'esc.signal = dshot300',
  'control.rate = 2 kHz',
  'gyro.rate = 4 kHz',
  'gyro.chain = none',
  'motor.response-time = 25 ms',
];

function delay(...lines: readonly string[]): number {
  const figure = figureOf(new CraftView(craftOf([...loop, ...lines].join('\n')), null), 'loop-delay');
  return figure?.likely ?? Number.NaN;
}

describe('the wait for a motor command', () => {
  it('ends with its last bit: half a sample, a round and a half, 16 bits at 300 kbit/s, the lag', () => {
    near(delay(), 0.125 + 0.75 + 16 / 300 + 25, 1e-9);
  });

  it('is no longer with an answer, which comes after it', () => {
    near(delay('esc.speed-feedback = on'), delay('esc.speed-feedback = off'), 1e-12);
  });

  it('is longer where fewer commands are sent than the loop works out: half the difference of the intervals', () => {
    near(delay('esc.update-rate = 500 Hz') - delay(), (2 - 0.5) / 2, 1e-9);
    near(delay('esc.update-rate = 8 kHz'), delay(), 1e-12);
  });

  it('is longer with a signal that repeats more slowly than the loop: pulses of up to 2 ms leave 500 a second', () => {
    const pulses = loop.map((line) => (line.startsWith('esc.signal') ? 'esc.signal = servo-pulse' : line));
    const figure = figureOf(new CraftView(craftOf(pulses.join('\n')), null), 'loop-delay');
    near(figure?.likely ?? Number.NaN, 0.125 + 0.5 + 1 + 2 + 25, 1e-9);
  });
});
