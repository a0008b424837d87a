import type { Board } from '../catalog/model/hardware';
import type { Finding } from '../checks/finding';
import type { CraftView } from '../craft/view';
import { parseQuantity, shortText } from '../units/quantity';
import { type Target, targetOfPath } from './target';

/** Part 2: what hangs on which port and which supply. */
export interface WiredWhere {
  readonly id: 'wired-where';
  readonly title: string;
  readonly answer: string;
  /** null: the script names no board that is known. */
  readonly board: string | null;
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

export interface SheetRail {
  readonly name: string;
  /** Ready to show: "5 V". */
  readonly voltage: string;
  /** In ampere. */
  readonly used: number;
  readonly limit: number | null;
  readonly loads: readonly {
    readonly name: string;
    readonly current: number | null;
    readonly target: Target | null;
  }[];
}

export function wiredWhere(view: CraftView, findings: readonly Finding[]): WiredWhere {
  const { board } = view;
  const ports = board?.ports.map((port) => sheetPort(view, port, findings)) ?? [];
  const rails = board === undefined ? [] : sheetRails(view, board);
  const used = ports.filter((port) => port.devices.length > 0).length;
  const answer = board === undefined ? 'no board set' : `${used} of ${ports.length} ports in use`;
  return {
    id: 'wired-where',
    title: 'Who is wired where?',
    answer,
    board: board?.title ?? null,
    ports,
    rails,
  };
}

/** Parameters that name a port, with what hangs on it. */
function portParameters(view: CraftView): readonly { readonly path: string; readonly device: string }[] {
  return [...view.catalog.parameters.values()].flatMap(({ name, parameter }) => {
    if (parameter.kind !== 'word' || parameter.choicesFrom !== 'ports' || name.includes('<')) return [];
    return [{ path: name, device: deviceName(name) }];
  });
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

function sheetPort(view: CraftView, port: Board['ports'][number], findings: readonly Finding[]): SheetPort {
  const devices = portParameters(view)
    .filter(({ path }) => view.isSet(path) && view.word(path) === port.name)
    .map(({ path, device }) => ({ name: device, path, target: targetOfPath(view, path) }));
  const isMarked = devices.some(({ path }) => {
    const origin = view.setting(path)?.origin;
    return findings.some(
      ({ level, place, check }) =>
        (level === 'must-fix' || level === 'risk') &&
        check.id.startsWith('wire/') &&
        place.line === origin?.line,
    );
  });
  return {
    name: port.name,
    devices,
    sharedWith: port.sharedWith ?? null,
    hasConflict: devices.length > 1 || isMarked,
  };
}

function sheetRails(view: CraftView, board: Board): readonly SheetRail[] {
  return board.rails.map((rail) => {
    const volts = rail.voltage === null ? null : (parseQuantity(rail.voltage)?.value ?? null);
    const loads = view
      .members('wire')
      .filter((device) => isOn(view, device, volts))
      .map((device) => ({
        name: device.replaceAll('-', ' '),
        current: view.quantity(`wire.${device}.current`),
        target: targetOfPath(view, `wire.${device}.supply`),
      }));
    return {
      name: rail.name,
      voltage: volts === null ? 'pack' : shortText(volts, 'V'),
      used: loads.reduce((sum, load) => sum + (load.current ?? 0), 0),
      limit: rail.currentLimit === null ? null : (parseQuantity(rail.currentLimit)?.value ?? null),
      loads,
    };
  });
}

/** Whether a device hangs on a rail: its supply is that voltage, or `pack` for the pack's. */
function isOn(view: CraftView, device: string, volts: number | null): boolean {
  const path = `wire.${device}.supply`;
  if (!view.isSet(path)) return false;
  const value = view.value(path);
  if (value?.kind === 'word') return volts === null;
  return value?.kind === 'quantity' && volts !== null && Math.abs(value.value - volts) < 0.05;
}
