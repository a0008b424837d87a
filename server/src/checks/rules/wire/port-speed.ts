import { inBase } from '../../../catalog/known-parameter';
import type { Link } from '../../../catalog/model/hardware';
import type { CraftView } from '../../../craft/view';
import { dividerError, frameTime, recommendedError } from '../../../physics/serial';
import type { CodeRule } from '../../rule';
import { type PortUser, portUsers } from './port-users';

/** Symbols a second on a device's line: as the script says for the position receiver, else as the link has it. */
function speedOf(view: CraftView, { path }: PortUser, link: Link): number {
  const said = path === 'position.port' ? view.quantity('position.speed') : null;
  return said ?? inBase(link.baud);
}

/**
 * The board's clock, divided by whole numbers, must come near enough to the line's speed. Half of what is
 * recommended for both ends together is left to the board.
 */
const clockError: CodeRule = {
  ids: ['wire/clock-error'],
  scope: 'craft',
  check(view, report) {
    const clock = view.hardware.serialClock;
    if (clock === undefined) return;
    for (const user of portUsers(view)) {
      if (user.link === undefined) continue;
      const speed = speedOf(view, user, user.link);
      const error = dividerError(inBase(clock), speed);
      const allowed = (recommendedError(user.link) ?? 0.015) / 2;
      if (Math.abs(error) <= allowed) continue;
      const values = {
        port: user.port,
        clock,
        speed: view.amount(speed, 'baud'),
        error: view.amount(Math.abs(error), '%'),
        way: error > 0 ? 'fast' : 'slow',
        allowed: view.amount(allowed, '%'),
      };
      report({ id: 'wire/clock-error', at: user.path, values });
    }
  },
};

/** A report must be through before the next one begins. */
const positionLineFull: CodeRule = {
  ids: ['wire/position-line-full'],
  scope: 'craft',
  check(view, report) {
    const link = view.catalog.link(view.word('position.protocol') ?? '');
    const interval = view.quantity('position.interval');
    if (link === undefined || interval === null) return;
    const speed = view.quantity('position.speed') ?? inBase(link.baud);
    const time = frameTime(link.frameBytes, link, speed);
    if (time <= interval) return;
    const values = {
      link: link.name,
      bytes: String(link.frameBytes),
      speed: view.amount(speed, 'baud'),
      time: view.amount(time, 'ms'),
      interval: view.shown('position.interval'),
    };
    const at = view.isSet('position.speed') ? 'position.speed' : 'position.interval';
    report({ id: 'wire/position-line-full', at, values });
  },
};

export const portSpeedRules: readonly CodeRule[] = [clockError, positionLineFull];
