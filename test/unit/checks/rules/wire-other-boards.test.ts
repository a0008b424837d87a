import assert from 'node:assert/strict';
import { built } from '../../../support/other-boards';

describe('checks: wire, on boards that do not ship', () => {
  it('wire/clock-error: 4 MHz makes 400 000 baud out of 420 000', () => {
    const text = 'board.profile = slow\nreceiver.link = crsf\nreceiver.port = uart2';
    const found = built({ name: 'slow', hardware: { serialClock: '4 MHz' } }, text);
    assert.deepEqual(
      found.filter(({ id }) => id === 'wire/clock-error').map(({ marked }) => marked),
      ['uart2'],
    );
    const message = found.find(({ id }) => id === 'wire/clock-error')?.message ?? '';
    assert.match(message, /is 4\.76 % too slow/);
  });

  it('wire/clock-error is quiet where the clock divides evenly', () => {
    const text = 'board.profile = slow\nreceiver.link = crsf\nreceiver.port = uart2';
    const found = built({ name: 'slow', hardware: { serialClock: '84 MHz' } }, text);
    assert.ok(found.every(({ id }) => id !== 'wire/clock-error'));
  });

  const deaf = { name: 'uart2', directions: ['out' as const], invertedIn: false, invertedOut: false };
  const text = 'board.profile = deaf\nreceiver.link = sbus\nreceiver.inverted = off\nreceiver.port = uart2';

  it('wire/port-direction: a receiver on a port that only speaks', () => {
    const found = built({ name: 'deaf', hardware: { ports: [deaf] } }, text);
    assert.deepEqual(
      found.filter(({ id }) => id === 'wire/port-direction').map(({ marked }) => marked),
      ['uart2'],
    );
  });

  it('wire/port-direction is quiet on a port that hears', () => {
    const found = built({ name: 'deaf', hardware: { ports: [{ ...deaf, directions: ['in'] }] } }, text);
    assert.ok(found.every(({ id }) => id !== 'wire/port-direction'));
  });
});
