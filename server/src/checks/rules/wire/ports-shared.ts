import { inBase } from '../../../catalog/known-parameter';
import type { CraftView } from '../../../craft/view';
import { capitalised } from '../../../units/capitals';
import type { CodeRule, ReportFinding, RuleFinding } from '../../rule';
import { freeText, moveFix, type PortUser, portUsers } from './port-users';

const shared = 'wire/port-shared';
const mixed = 'wire/control-and-telemetry-share';

/** Who shares the control of the video transmitter is reported where the picture is checked. */
const controlPort = 'video.control-port';

/** One device a port, unless one link carries what both say. */
const portShared: CodeRule = {
  ids: [shared, mixed],
  scope: 'craft',
  check(view, report) {
    const first = new Map<string, PortUser>();
    for (const user of portUsers(view)) {
      if (user.path === controlPort) continue;
      const before = first.get(user.port);
      if (before === undefined) first.set(user.port, user);
      else if (!isOneLine(before, user)) report(clash(view, before, user));
    }
  },
};

/** The receiver and its telemetry may share a link that talks both ways, as may all users of one such link. */
function isOneLine(one: PortUser, other: PortUser): boolean {
  return one.link !== undefined && one.link === other.link && one.link.directions === 'both';
}

function clash(view: CraftView, before: PortUser, user: PortUser): RuleFinding {
  const related = [
    {
      at: before.path,
      message: '{device} is on {port} too.',
      values: { device: capitalised(before.device), port: user.port },
    },
  ];
  const common = { at: user.path, related, fixes: moveFix(view, user) };
  const free = freeText(view, user);
  const isMixed = before.path === 'receiver.port' && user.path === 'telemetry.port';
  if (isMixed && before.link !== undefined && user.link !== undefined) {
    const values = { receiver: lineText(view, before), telemetry: lineText(view, user), port: user.port };
    return { id: mixed, ...common, values: { ...values, free } };
  }
  const values = { device: capitalised(user.device), other: before.device, port: user.port, free };
  return { id: shared, ...common, values };
}

/** `sbus at 100000 baud, inverted` */
function lineText(view: CraftView, { link, isInverted }: PortUser): string {
  if (link === undefined) return 'an unknown link';
  return `${link.name} at ${view.short(inBase(link.baud), 'baud')}${isInverted ? ', inverted' : ''}`;
}

/** A receiver whose link brings the telemetry too has one port, not two. */
const receiverOnTwoPorts: CodeRule = {
  ids: ['wire/receiver-two-ports'],
  scope: 'craft',
  check(view, report) {
    const users = portUsers(view);
    const receiver = users.find(({ path }) => path === 'receiver.port');
    const telemetry = users.find(({ path }) => path === 'telemetry.port');
    if (receiver?.link === undefined || telemetry === undefined) return;
    if (receiver.link !== telemetry.link || receiver.port === telemetry.port) return;
    // A link that is first of all telemetry may well have a radio of its own beside the receiver.
    if (receiver.link.directions !== 'both' || receiver.link.uses[0] !== 'receiver') return;
    report(twoPorts(receiver, telemetry, receiver.link.name));
  },
};

function twoPorts(receiver: PortUser, telemetry: PortUser, link: string): RuleFinding {
  return {
    id: 'wire/receiver-two-ports',
    at: telemetry.path,
    values: { link, one: receiver.port, other: telemetry.port },
    related: [
      { at: receiver.path, message: "The receiver's first port, {port}.", values: { port: receiver.port } },
    ],
    fixes: [{ title: 'Write {to}', set: telemetry.path, to: receiver.port }],
  };
}

/** Solder joints stay where they are when another pack is strapped on. */
const portChangesWithPack: CodeRule = {
  ids: ['wire/port-changes-with-pack'],
  scope: 'pack',
  check(view, report) {
    for (const { path, device, port } of portUsers(view)) reportMove(view, path, device, port, report);
  },
};

function reportMove(
  view: CraftView,
  path: string,
  device: string,
  port: string,
  report: ReportFinding,
): void {
  const usual = view.craft.setting(path, null)?.value;
  if (usual?.kind !== 'word' || usual.value === port) return;
  const values = { device: capitalised(device), port, usual: usual.value };
  const fixes = [{ title: 'Write {to}', set: path, to: usual.value }];
  report({ id: 'wire/port-changes-with-pack', at: path, values, fixes });
}

export const sharedPortRules: readonly CodeRule[] = [portShared, receiverOnTwoPorts, portChangesWithPack];
