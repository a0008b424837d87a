import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

const figure = (id: string, lines: readonly string[]) =>
  figureOf(new CraftView(craftOf(lines.join('\n')), null), id);

describe('figures of link, picture and log', () => {
  it('the interval of control frames is what the script says, else the usual one of the link, and then told as assumed', () => {
    const set = figure('receiver-frame-interval', ['receiver.link = sbus', 'receiver.frame-interval = 7 ms']);
    near(set?.likely ?? 0, 7, 1e-9);
    assert.deepEqual(set?.assumed, []);
    const usual = figure('receiver-frame-interval', ['receiver.link = sbus']);
    near(usual?.likely ?? 0, 9, 1e-9);
    assert.match(usual?.assumed.join() ?? '', /usual 9 ms/);
    assert.equal(figure('receiver-frame-interval', ['receiver.frame-interval = 7']), null);
  });

  it('a frame of 25 characters of 12 bits at 100 000 baud takes 3 ms (Zephyr RTOS, input_sbus.c)', () => {
    near(figure('receiver-frame-time', ['receiver.link = sbus'])?.likely ?? 0, 3, 1e-9);
  });

  it('25 mW into a dipole of 2.15 dBi radiate 41 mW (gain 1.64), and the usual antenna is told as assumed', () => {
    const radiated = figure('video-radiated-power', ['video.power = 25 mW']);
    near(radiated?.likely ?? 0, 25 * 1.64, 1e-3);
    assert.ok(radiated?.assumed.some((text) => text.startsWith('video.antenna-gain')));
    assert.equal(figure('video-radiated-power', ['video.power = 0.00001 W / 0']), null);
  });

  it('a locked transmitter sends its lowest step, whatever it is asked for', () => {
    const steps = ['video.power = 400 mW', 'video.power-steps.1 = 25 mW', 'video.power-steps.2 = 400 mW'];
    const locked = figure('video-radiated-power', [...steps, 'video.locked = on']);
    near(locked?.likely ?? 0, 25 * 1.64, 1e-3);
    assert.ok(locked?.assumed.includes('locked at its lowest step, 25 mW'));
    near(figure('video-radiated-power', [...steps, 'video.locked = off'])?.likely ?? 0, 400 * 1.64, 1e-3);
  });

  it('the carrier comes from the frequency, else from the plan of the band', () => {
    near(figure('video-frequency', ['video.band = r', 'video.channel = 6'])?.likely ?? 0, 5843, 1e-9);
    const given = ['video.frequency = 5.8 GHz', 'video.band = r', 'video.channel = 6'];
    near(figure('video-frequency', given)?.likely ?? 0, 5800, 1e-9);
    assert.equal(figure('video-frequency', ['video.channel = 6']), null);
  });

  it("a log lasts by its lines: the board's own memory where it goes there", () => {
    const log = [
      'record.medium = flash',
      'record.rate = 1 kHz',
      'record.fields = [raw-rates, sticks, link-state]',
    ];
    const own = figure('log-minutes', ['board.profile = heron', ...log]); // 16 MB of lines of 22 bytes
    near(own?.likely ?? 0, 16e6 / 22e3 / 60, 1e-9);
    assert.equal(figure('log-minutes', log), null);
    assert.equal(figure('log-minutes', ['board.profile = wren', ...log]), null);
    near(figure('log-minutes', ['record.size = 22 MB', ...log])?.likely ?? 0, 1000 / 60, 1e-9);
  });
});
