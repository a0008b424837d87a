import type { CodeRule } from '../../rule';
import { canCarry, freePorts, moveFix, portUsers } from '../wire/port-users';

/** The port on which the board controls the video transmitter. */
export const videoControlRules: readonly CodeRule[] = [
  {
    ids: ['see/control-port-shared'],
    scope: 'craft',
    check(view, report) {
      const users = portUsers(view);
      const control = users.find(({ path }) => path === 'video.control-port');
      if (control === undefined) return;
      for (const other of users) {
        if (other === control || other.port !== control.port) continue;
        const free = freePorts(view).find((port) => canCarry(port, control));
        report({
          id: 'see/control-port-shared',
          at: control.path,
          values: {
            port: control.port,
            device: other.device,
            free: free === undefined ? '' : `, such as ${free.name}`,
          },
          related: [{ at: other.path, message: '{port} is taken here.', values: { port: other.port } }],
          fixes: moveFix(view, control),
        });
      }
    },
  },
  {
    ids: ['see/control-port-unused'],
    scope: 'craft',
    check(view, report) {
      const control = view.word('video.control');
      if (!view.isSet('video.control-port') || (control !== 'off' && control !== 'button')) return;
      const values = { port: view.shown('video.control-port'), control };
      report({ id: 'see/control-port-unused', at: 'video.control-port', values });
    },
  },
];
