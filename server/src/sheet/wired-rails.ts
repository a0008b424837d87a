import type { Finding } from '../checks/report/finding';
import type { CraftView } from '../craft/view';
import {
  isSameVoltage,
  loadsOn,
  type RailLoad,
  railsOf,
  suppliedDevices,
  supplyPathOf,
} from '../figures/supply';
import { type Target, targetOfPath } from './target';

export interface SheetRail {
  /** Ready to show: "5 V". */
  readonly voltage: string;
  /** Whether the board has it; false for a supply that only devices name, null where nobody described the board's. */
  readonly isOnBoard: boolean | null;
  /** Sum of the currents that are known, in ampere. */
  readonly used: number;
  readonly limit: number | null;
  readonly loads: readonly SheetLoad[];
  readonly hasConflict: boolean;
}

export interface SheetLoad {
  readonly name: string;
  /** In ampere. */
  readonly current: number | null;
  /** The line that says what feeds it. */
  readonly target: Target | null;
  readonly hasConflict: boolean;
}

/** What each supply feeds: the board's own first, then what only devices name. */
export function sheetRails(view: CraftView, findings: readonly Finding[]): readonly SheetRail[] {
  return [...boardRails(view, findings), ...otherRails(view, findings)];
}

function boardRails(view: CraftView, findings: readonly Finding[]): readonly SheetRail[] {
  return railsOf(view).map((rail) => {
    const loads = loadsOn(view, rail).map((load) => sheetLoad(view, load, findings));
    const used = loads.reduce((sum, load) => sum + (load.current ?? 0), 0);
    const isOverloaded = rail.limit !== null && used > rail.limit;
    return {
      voltage: view.short(rail.voltage, 'V'),
      isOnBoard: true,
      used,
      limit: rail.limit,
      loads,
      hasConflict: isOverloaded || loads.some(({ hasConflict }) => hasConflict),
    };
  });
}

/** Devices that are to be fed with what the board doesn't give: the pack itself, or a regulator of their own. */
function otherRails(view: CraftView, findings: readonly Finding[]): readonly SheetRail[] {
  const rails = railsOf(view);
  const isDescribed = view.hardware.rails?.every(({ voltage }) => voltage !== undefined) ?? false;
  return suppliedDevices().flatMap((device) => {
    const supplyPath = supplyPathOf(view, device);
    const voltage = supplyPath === null ? null : view.quantity(supplyPath);
    if (supplyPath === null || voltage === null) return [];
    if (rails.some((rail) => isSameVoltage(rail.voltage, voltage))) return [];
    const current = view.quantity(`wire.${device}.current`);
    const load = sheetLoad(view, { device, supplyPath, current }, findings);
    return [
      {
        voltage: view.short(voltage, 'V'),
        isOnBoard: isDescribed ? false : null,
        used: current ?? 0,
        limit: null,
        loads: [load],
        hasConflict: load.hasConflict,
      },
    ];
  });
}

function sheetLoad(
  view: CraftView,
  { device, supplyPath, current }: Pick<RailLoad, 'device' | 'supplyPath' | 'current'>,
  findings: readonly Finding[],
): SheetLoad {
  return {
    name: device.replaceAll('-', ' '),
    current,
    target: targetOfPath(view, supplyPath),
    hasConflict: isWiringMarked(view, supplyPath, findings),
  };
}

/** Whether something about the wiring was found on the line that sets a parameter. */
export function isWiringMarked(view: CraftView, path: string, findings: readonly Finding[]): boolean {
  const origin = view.setting(path)?.origin;
  return findings.some(
    ({ level, accepted, place, check }) =>
      (level === 'must-fix' || (level === 'risk' && accepted === null)) &&
      check.id.startsWith('wire/') &&
      place.line === origin?.line,
  );
}
