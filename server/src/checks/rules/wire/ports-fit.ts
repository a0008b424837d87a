import type { Port } from '../../../catalog/model/board-hardware';
import type { CraftView } from '../../../craft/view';
import type { CodeRule, RuleFinding } from '../../rule';
import { freeText, lackOf, missingInversion, moveFix, type PortUser, portOf, portUsers } from './port-users';

/** Runs a check for every device on a port that the board has. */
function forEachUser(
  id: string,
  look: (view: CraftView, user: PortUser, port: Port) => RuleFinding['values'] | null,
): CodeRule {
  return {
    ids: [id],
    scope: 'craft',
    check(view, report) {
      for (const user of portUsers(view)) {
        const port = portOf(view, user.port);
        const values = port === undefined ? null : look(view, user, port);
        if (values === null) continue;
        report({ id, at: user.path, values: values ?? {}, fixes: moveFix(view, user) });
      }
    },
  };
}

/** What every sentence of these checks may name. */
function named(view: CraftView, user: PortUser): Record<string, string> {
  return {
    device: user.device,
    port: user.port,
    board: view.boardTitle,
    link: user.link?.name ?? '',
    free: freeText(view, user),
  };
}

const direction = forEachUser('wire/port-direction', (view, user, port) => {
  const lack = lackOf(port, user.link);
  return lack === null ? null : { ...named(view, user), lacks: lack === 'in' ? 'hear' : 'speak' };
});

const inversion = forEachUser('wire/port-inversion', (view, user, port) => {
  if (!user.isInverted || user.link === undefined) return null;
  const lack = missingInversion(port, user.link);
  return lack === null ? null : { ...named(view, user), lacks: lack };
});

const usb = forEachUser('wire/port-shared-with-board', (view, user, port) =>
  port.sharedWith === undefined ? null : { ...named(view, user), shared: port.sharedWith },
);

/** A polarity that the link doesn't usually have is right only with an inverter in the lead. */
const polarity: CodeRule = {
  ids: ['wire/polarity-unusual'],
  scope: 'craft',
  check(view, report) {
    for (const [at, linkPath] of [
      ['receiver.inverted', 'receiver.link'],
      ['telemetry.inverted', 'telemetry.link'],
    ] as const) {
      const said = view.flag(at);
      const link = view.catalog.link(view.word(linkPath) ?? '');
      if (said === null || link === undefined || said === link.inverted) continue;
      const usual = link.inverted ? 'inverted' : 'not inverted';
      const values = { link: link.name, usual, said: said ? 'on' : 'off' };
      report({ id: 'wire/polarity-unusual', at, values });
    }
  },
};

export const fittingPortRules: readonly CodeRule[] = [direction, inversion, usb, polarity];
