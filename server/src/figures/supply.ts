import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import type { Computed, FigureSource } from './figure';
import { fine } from './why';

/** A regulated rail of the craft. The pack's own voltage is none. */
export interface SupplyRail {
  readonly voltage: number;
  /** Lasting current in ampere; null where nobody says. */
  readonly limit: number | null;
  /** The parameter that sets the limit, where the script has one for this rail. */
  readonly limitPath: string | null;
}

/** A device on a rail. */
export interface RailLoad {
  /** `transmitter` */
  readonly device: string;
  readonly supplyPath: string;
  readonly currentPath: string;
  /** Ampere; null where the script doesn't say. */
  readonly current: number | null;
  readonly peak: number | null;
}

/** Devices that hang on a rail, each with the other parameter that may say its voltage. */
const devices: ReadonlyMap<string, string | null> = new Map([
  ['receiver', 'receiver.supply'],
  ['camera', null],
  ['transmitter', 'video.supply'],
  ['buzzer', null],
  ['lights', null],
]);

const slots = [
  { low: 4.5, high: 5.5, usual: 5, path: 'board.supply.five-volt-limit' },
  { low: 3, high: 3.6, usual: 3.3, path: 'board.supply.three-volt-limit' },
  { low: 8, high: 13, usual: 9, path: 'board.supply.camera-rail-limit' },
] as const;

/** Whether two voltages are meant to be the same rail. */
export function isSameVoltage(one: number, other: number): boolean {
  return Math.abs(one - other) <= 0.03 * Math.max(one, other);
}

/** The rails of the board; where nobody described them, those whose limit the script gives. */
export function railsOf(view: CraftView): readonly SupplyRail[] {
  const { rails } = view.hardware;
  if (rails === undefined) {
    return slots.flatMap(({ usual, path }) =>
      view.isSet(path) ? [{ voltage: usual, limit: view.quantity(path), limitPath: path }] : [],
    );
  }
  return rails.flatMap((rail) => {
    if (rail.voltage == null) return [];
    const voltage = inBase(rail.voltage);
    const limitPath = slots.find(({ low, high }) => voltage >= low && voltage <= high)?.path ?? null;
    if (limitPath !== null && view.isSet(limitPath))
      return [{ voltage, limit: view.quantity(limitPath), limitPath }];
    return [{ voltage, limit: rail.currentLimit == null ? null : inBase(rail.currentLimit), limitPath }];
  });
}

/** Where the script says what a device is fed with; null where it doesn't. */
export function supplyPathOf(view: CraftView, device: string): string | null {
  const wire = `wire.${device}.supply`;
  if (view.isSet(wire)) return wire;
  const other = devices.get(device) ?? null;
  return other !== null && view.isSet(other) ? other : null;
}

/** Every device with a supply of its own. */
export function suppliedDevices(): readonly string[] {
  return [...devices.keys()];
}

export function loadsOn(view: CraftView, { voltage }: SupplyRail): readonly RailLoad[] {
  return suppliedDevices().flatMap((device) => {
    const supplyPath = supplyPathOf(view, device);
    const given = supplyPath === null ? null : view.quantity(supplyPath);
    if (supplyPath === null || given === null || !isSameVoltage(given, voltage)) return [];
    const currentPath = `wire.${device}.current`;
    const current = view.quantity(currentPath);
    return [
      {
        device,
        supplyPath,
        currentPath,
        current,
        peak: view.quantityOr(`wire.${device}.peak-current`, null),
      },
    ];
  });
}

export const supplyFigures: readonly FigureSource[] = [
  { id: 'five-volt-load', title: 'Drawn from 5 V', ...load(5, 'board.supply.five-volt-limit') },
  { id: 'three-volt-load', title: 'Drawn from 3.3 V', ...load(3.3, 'board.supply.three-volt-limit') },
  {
    id: 'camera-rail-load',
    title: "Drawn from the camera's rail",
    ...load(9, 'board.supply.camera-rail-limit'),
  },
];

function load(usual: number, path: string): Pick<FigureSource, 'unit' | 'from' | 'compute'> {
  return {
    unit: 'A',
    from: [path, ...suppliedDevices().map((device) => `wire.${device}.current`)],
    compute: (view) => sumOn(view, railNear(view, usual)),
  };
}

function railNear(view: CraftView, usual: number): SupplyRail | undefined {
  const slot = slots.find((one) => one.usual === usual);
  return railsOf(view).find(
    ({ voltage }) => slot !== undefined && voltage >= slot.low && voltage <= slot.high,
  );
}

function sumOn(view: CraftView, rail: SupplyRail | undefined): Computed | null {
  if (rail === undefined) return null;
  const loads = loadsOn(view, rail);
  const known = loads.filter((one) => one.current !== null);
  if (known.length === 0) return null;
  const unknown = loads.filter((one) => one.current === null).map(({ device }) => device);
  return {
    likely: known.reduce((sum, { current }) => sum + (current ?? 0), 0),
    // Nobody knows by how much it is more.
    ...(unknown.length === 0 ? {} : { highWords: 'unknown' }),
    why: known.map(({ device, current }) => `${device}: ${fine(current ?? 0, 'A')}`).join(' + '),
    assumed: unknown.map((device) => `nothing for the ${device}, whose current is not said`),
  };
}
