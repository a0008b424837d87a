import type { Catalog } from '../catalog/catalog';
import type { Port } from '../catalog/model/board-hardware';
import type { Finding } from '../checks/report/finding';
import type { CraftView } from '../craft/view';
import { type Target, targetOfPath } from './target';
import { isWiringMarked, type SheetRail, sheetRails } from './wired-rails';

/** Part 2: what hangs on which port and which supply. */
export interface WiredWhere {
  readonly id: 'wired-where';
  readonly title: string;
  readonly answer: string;
  /** null: the script names no board that is known. */
  readonly board: string | null;
  /** false: nobody has described the ports of the board; those that the script names are shown. */
  readonly hasAllPorts: boolean;
  readonly ports: readonly SheetPort[];
  readonly rails: readonly SheetRail[];
}

export interface SheetPort {
  readonly name: string;
  readonly devices: readonly {
    readonly name: string;
    readonly path: string;
    readonly target: Target | null;
  }[];
  /** What else its pins do, such as "USB set-up". */
  readonly sharedWith: string | null;
  readonly hasConflict: boolean;
}

export function wiredWhere(view: CraftView, findings: readonly Finding[]): WiredWhere {
  const described = view.hardware.ports;
  const plugged = pluggedDevices(view);
  const ports = (described ?? namedPorts(plugged)).map((port) => sheetPort(view, port, plugged, findings));
  const rails = sheetRails(view, findings);
  return {
    id: 'wired-where',
    title: 'What is wired where?',
    answer: `${view.craft.boardName() === null ? 'no board set, ' : ''}${answer(ports, rails, described !== undefined)}`,
    board: view.board === undefined ? null : view.boardTitle,
    hasAllPorts: described !== undefined,
    ports,
    rails,
  };
}

function answer(ports: readonly SheetPort[], rails: readonly SheetRail[], hasAllPorts: boolean): string {
  const used = ports.filter(({ devices }) => devices.length > 0).length;
  const conflicts =
    ports.filter(({ hasConflict }) => hasConflict).length +
    rails.filter(({ hasConflict }) => hasConflict).length;
  const trouble = conflicts === 0 ? '' : conflicts === 1 ? ', 1 conflict' : `, ${conflicts} conflicts`;
  const known = hasAllPorts ? `${used} of ${ports.length} ports` : used === 1 ? '1 port' : `${used} ports`;
  return `${known} in use${trouble}`;
}

interface PortParameter {
  readonly path: string;
  readonly device: string;
}

const portParametersOf = new WeakMap<Catalog, readonly PortParameter[]>();

/** Parameters that name a port, with what hangs on it. */
function portParameters({ catalog }: CraftView): readonly PortParameter[] {
  const known = portParametersOf.get(catalog);
  if (known !== undefined) return known;
  const found = [...catalog.parameters.values()].flatMap(({ name, parameter }) => {
    if (parameter.kind !== 'word' || parameter.choicesFrom !== 'ports' || name.includes('<')) return [];
    return [{ path: name, device: deviceName(name) }];
  });
  portParametersOf.set(catalog, found);
  return found;
}

/** `receiver.port` is the receiver; `video.control-port` is the control of the video. */
function deviceName(path: string): string {
  const [group = '', ...rest] = path.split('.');
  const role = rest
    .join(' ')
    .replace(/-?port$/, '')
    .replaceAll('-', ' ')
    .trim();
  return role === '' ? group.replaceAll('-', ' ') : `${group.replaceAll('-', ' ')} ${role}`;
}

/** A device with the port that the script names for it. */
interface PluggedDevice extends PortParameter {
  readonly port: string;
}

function pluggedDevices(view: CraftView): readonly PluggedDevice[] {
  return portParameters(view).flatMap(({ path, device }) => {
    const port = view.isSet(path) ? view.word(path) : null;
    return port === null ? [] : [{ path, device, port }];
  });
}

/** Ports of a board that nobody has described: as far as the script names them, in its order of devices. */
function namedPorts(plugged: readonly PluggedDevice[]): readonly Pick<Port, 'name' | 'sharedWith'>[] {
  return [...new Set(plugged.map(({ port }) => port))].map((name) => ({ name }));
}

function sheetPort(
  view: CraftView,
  port: Pick<Port, 'name' | 'sharedWith'>,
  plugged: readonly PluggedDevice[],
  findings: readonly Finding[],
): SheetPort {
  const devices = plugged
    .filter((each) => each.port === port.name)
    .map(({ path, device }) => ({ name: device, path, target: targetOfPath(view, path) }));
  return {
    name: port.name,
    devices,
    sharedWith: port.sharedWith ?? null,
    hasConflict: devices.length > 1 || devices.some(({ path }) => isWiringMarked(view, path, findings)),
  };
}
