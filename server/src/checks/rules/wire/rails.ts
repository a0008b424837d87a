import { inBase } from '../../../catalog/known-parameter';
import type { CraftView } from '../../../craft/view';
import { isSameVoltage, loadsOn, type RailLoad, railsOf, type SupplyRail } from '../../../figures/supply';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';

/** A rail with what hangs on it, summed up. Amperes. */
interface Loaded {
  readonly limit: number;
  readonly loads: readonly RailLoad[];
  readonly sum: number;
  /** The sum when the device whose peak rises furthest above its continuous current is at its peak. */
  readonly peak: number;
  readonly peaking: RailLoad | undefined;
}

const overload: CodeRule = {
  ids: ['wire/rail-overload', 'wire/rail-margin', 'wire/rail-peak'],
  scope: 'pack',
  check(view, report) {
    const margin = view.quantity('board.supply.margin') ?? 0;
    for (const rail of railsOf(view)) {
      const loaded = loadedRail(view, rail);
      if (loaded === null) continue;
      const { limit, sum, peak } = loaded;
      if (isOver(sum, limit)) report(finding(view, 'wire/rail-overload', rail, loaded));
      else if (isOver(peak, limit)) report(finding(view, 'wire/rail-peak', rail, loaded));
      else if (isOver(sum, limit * (1 - margin))) report(finding(view, 'wire/rail-margin', rail, loaded));
    }
  },
};

function isOver(value: number, limit: number): boolean {
  return value > limit * (1 + 1e-9);
}

function loadedRail(view: CraftView, rail: SupplyRail): Loaded | null {
  const loads = loadsOn(view, rail).filter(({ current, peak }) => current !== null || peak !== null);
  if (rail.limit === null || loads.length === 0) return null;
  const sum = loads.reduce((total, { current }) => total + (current ?? 0), 0);
  const peaking = [...loads].sort((one, other) => riseOf(other) - riseOf(one))[0];
  return {
    limit: rail.limit,
    loads,
    sum,
    peak: sum + (peaking === undefined ? 0 : riseOf(peaking)),
    peaking,
  };
}

function riseOf({ current, peak }: RailLoad): number {
  return peak === null ? 0 : Math.max(0, peak - (current ?? 0));
}

/** Stands at the largest current of the rail. */
function finding(
  view: CraftView,
  id: string,
  rail: SupplyRail,
  { limit, loads, sum, peak, peaking }: Loaded,
): RuleFinding {
  const ranked = loads
    .filter(({ current }) => current !== null)
    .sort((one, other) => (other.current ?? 0) - (one.current ?? 0));
  const [largest, ...others] = ranked.length === 0 ? loads : ranked;
  const list = ranked.map(({ device, current }) => `${device} ${view.short(current ?? 0, 'A')}`);
  const isPeak = id === 'wire/rail-peak';
  return {
    id,
    at: isPeak
      ? `wire.${peaking?.device}.peak-current`
      : (largest?.currentPath ?? 'board.supply.five-volt-limit'),
    values: {
      rail: view.amount(rail.voltage, 'V'),
      sum: view.amount(sum, 'A'),
      peak: view.amount(peak, 'A'),
      limit: view.amount(limit, 'A'),
      list: list.join(', '),
      device: peaking?.device ?? '',
      left: view.amount(1 - sum / limit, '%'),
      margin: view.shown('board.supply.margin'),
    },
    fixes: fromPack(isPeak ? peaking : largest),
    related: others.map(({ device, currentPath, current }) => ({
      at: currentPath,
      message: 'Another {current} from the same rail: {device}.',
      values: { current: view.short(current ?? 0, 'A'), device: device.replaceAll('-', ' ') },
    })),
  };
}

/** Off the rail: only what hangs on it by a wire of its own can be moved. */
function fromPack(load: RailLoad | undefined): readonly RuleFix[] {
  if (load === undefined || !load.supplyPath.startsWith('wire.')) return [];
  const name = load.device.replaceAll('-', ' ');
  const look = 'that a regulator of its own is fitted, or that it bears the pack';
  return [
    { title: 'Feed the {name} from the pack', values: { name }, set: load.supplyPath, to: 'pack', look },
  ];
}

/** A sum that lacks a part is no sum: reported once one device of the rail has its current. */
const loadUnknown: CodeRule = {
  ids: ['wire/load-unknown'],
  scope: 'pack',
  whole: true,
  check(view, report) {
    for (const rail of railsOf(view)) {
      const loads = loadsOn(view, rail);
      if (!loads.some(({ current }) => current !== null)) continue;
      for (const { device, supplyPath, currentPath } of loads) {
        if (view.isSet(currentPath)) continue;
        const values = { device, rail: view.amount(rail.voltage, 'V') };
        report({ id: 'wire/load-unknown', at: supplyPath, values });
      }
    }
  },
};

/** A limit in the script above what the board's profile gives is a wish. */
const limitAboveBoard: CodeRule = {
  ids: ['wire/limit-above-board'],
  scope: 'craft',
  check(view, report) {
    const { rails } = view.hardware;
    if (rails === undefined) return;
    for (const { voltage, limit, limitPath } of railsOf(view)) {
      if (limit === null || limitPath === null || !view.isSet(limitPath)) continue;
      const own = rails.find((rail) => isRailOf(rail.voltage, voltage))?.currentLimit;
      if (own === undefined || own === null || !isOver(limit, inBase(own))) continue;
      const values = {
        said: view.shown(limitPath),
        rail: view.amount(voltage, 'V'),
        board: view.boardTitle,
        own,
      };
      const fixes = [{ title: 'Write {to}', set: limitPath, to: own }];
      report({ id: 'wire/limit-above-board', at: limitPath, values, fixes });
    }
  },
};

function isRailOf(text: string | null | undefined, voltage: number): boolean {
  return text != null && isSameVoltage(inBase(text), voltage);
}

export const railRules: readonly CodeRule[] = [overload, loadUnknown, limitAboveBoard];
