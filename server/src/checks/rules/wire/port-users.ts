import type { Port } from '../../../catalog/model/board-hardware';
import type { Link } from '../../../catalog/model/hardware';
import type { CraftView } from '../../../craft/view';

/** A device on a serial port, as far as the script says. */
export interface PortUser {
  /** As a sentence says it: "the receiver". */
  readonly device: string;
  readonly path: string;
  readonly port: string;
  /** What it speaks; undefined where the script doesn't say. */
  readonly link: Link | undefined;
  /** Whether the line is upside down: as the script says, else as the link is. */
  readonly isInverted: boolean;
}

interface PortUserRole {
  readonly device: string;
  readonly path: string;
  /** The parameter that names the link, or a link that is always the same. */
  readonly linkPath?: string;
  readonly link?: string;
  readonly invertedPath?: string;
}

/** Everything that can hang on a port; what a craft can least do without comes first and keeps its place. */
const roles: readonly PortUserRole[] = [
  {
    device: 'the receiver',
    path: 'receiver.port',
    linkPath: 'receiver.link',
    invertedPath: 'receiver.inverted',
  },
  {
    device: 'the telemetry',
    path: 'telemetry.port',
    linkPath: 'telemetry.link',
    invertedPath: 'telemetry.inverted',
  },
  { device: 'the position receiver', path: 'position.port', linkPath: 'position.protocol' },
  { device: "the transmitter's control", path: 'video.control-port', linkPath: 'video.control' },
  { device: "the speed controllers' reports", path: 'esc.telemetry-port', link: 'esc-report' },
];

/** "the receiver", for the parameter that names its port. */
export function deviceOn(path: string): string | undefined {
  return roles.find((role) => role.path === path)?.device;
}

/** The devices whose port the script sets and names rightly. */
export function portUsers(view: CraftView): readonly PortUser[] {
  return roles.flatMap((role) => {
    const port = view.word(role.path);
    return port === null ? [] : [portUser(view, role, port)];
  });
}

function portUser(view: CraftView, role: PortUserRole, port: string): PortUser {
  const { device, path, linkPath, invertedPath } = role;
  const word = role.link ?? (linkPath === undefined ? null : view.word(linkPath));
  const link = word === null ? undefined : view.catalog.link(word);
  const isSaid = invertedPath === undefined ? null : view.flag(invertedPath);
  return { device, path, port, link, isInverted: isSaid ?? link?.inverted ?? false };
}

export function portOf(view: CraftView, name: string): Port | undefined {
  return view.hardware.ports?.find((port) => port.name === name);
}

/** Ports of the board that nothing uses, best first: those that also serve something else are left out. */
export function freePorts(view: CraftView): readonly Port[] {
  const used = new Set(portUsers(view).map(({ port }) => port));
  return (view.hardware.ports ?? []).filter((port) => !used.has(port.name) && port.sharedWith === undefined);
}

/** Whether a port can carry what a device speaks, as far as is known. */
export function canCarry(port: Port, { link, isInverted }: PortUser): boolean {
  return lackOf(port, link) === null && (!isInverted || canInvert(port, link));
}

/** The direction that a link needs and a port surely lacks. */
export function lackOf(port: Port, link: Link | undefined): 'in' | 'out' | null {
  const { directions } = port;
  if (link === undefined || directions === undefined) return null;
  const needed = link.directions === 'both' ? (['in', 'out'] as const) : [link.directions];
  return needed.find((direction) => !directions.includes(direction)) ?? null;
}

function canInvert(port: Port, link: Link | undefined): boolean {
  return missingInversion(port, link) === null;
}

/** Which way a port surely can't turn the signal over though an inverted link needs it. */
export function missingInversion(port: Port, link: Link | undefined): 'read' | 'send' | null {
  const directions = link?.directions ?? 'in';
  if (directions !== 'out' && port.invertedIn === false) return 'read';
  if (directions !== 'in' && port.invertedOut === false) return 'send';
  return null;
}

/** "Move it to uart3", for a device that should be elsewhere; none where no free port can carry it. */
export function moveFix(view: CraftView, user: PortUser) {
  const better = freePorts(view).find((port) => canCarry(port, user));
  if (better === undefined) return [];
  return [
    { title: 'Move {device} to {to}', values: { device: user.device }, set: user.path, to: better.name },
  ];
}

/**
 * The best free port for the device whose port a setting names; null where none is known to fit. Of a board whose
 * ports nobody has described, the first that nothing uses under the names that most boards print.
 */
export function freePortFor(view: CraftView, path: string): string | null {
  const role = roles.find((one) => one.path === path);
  if (role === undefined) return null;
  const user = portUser(view, role, '');
  if (view.hardware.ports !== undefined)
    return freePorts(view).find((port) => canCarry(port, user))?.name ?? null;
  const used = new Set(portUsers(view).map(({ port }) => port));
  return printedPorts.find((name) => !used.has(name)) ?? null;
}

const printedPorts = ['uart1', 'uart2', 'uart3', 'uart4', 'uart5', 'uart6'];

export function freeText(view: CraftView, user: PortUser): string {
  return freePorts(view)
    .filter((port) => canCarry(port, user))
    .map(({ name }) => name)
    .join(', ');
}
