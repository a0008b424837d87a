import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Craft } from '../../server/src/craft/craft';
import { Script } from '../../server/src/craft/script';
import { CraftView } from '../../server/src/craft/view';
import { bodyOf } from '../../server/src/figures/body';
import { dampingAt } from '../../server/src/figures/damping';
import { carriedBy } from '../../server/src/figures/drive';
import { hovering } from '../../server/src/figures/drive-states';
import { type ChainName, stagesOf } from '../../server/src/figures/filter-stages';
import { rotorOf } from '../../server/src/figures/motor-lag';
import { testCatalog } from '../support/catalog';
import {
  type GainFade,
  gravity,
  type SimulatedCraft,
  type SimulatedFilter,
  type SimulatedGains,
} from './craft';
import { motorsAt } from './random-craft';

/** A script with what it includes, from the disk; with one of its packs in view. */
export function scriptAt(path: string, pack: string | null): CraftView {
  const folder = dirname(path);
  const read = (name: string) => {
    const file = join(folder, name);
    return new Script(pathToFileURL(file).href, readFileSync(file, 'utf8'), testCatalog);
  };
  const craft = new Craft(read(basename(path)), testCatalog, {
    open: (uri) => ({ kind: 'script', script: read(basename(new URL(uri).pathname)) }),
    isIncluded: () => false,
  });
  return new CraftView(craft, pack ?? craft.packs()[0] ?? null);
}

/**
 * What a script's own numbers make of a craft: taken as data from the figures' models, so that a recording of it looks
 * like the craft that the script is about. What no script says (weak propellers, gusts, tones of the frame, a slow part
 * of the pack) is put in by whoever simulates.
 */
export function craftFromScript(view: CraftView): SimulatedCraft {
  const carried = known('motors, propellers and pack', carriedBy(view))?.value.likely;
  const { drive, weight, charge, pack } = carried;
  const hover = known('the hover', hovering(carried));
  const rotor = known('the rotor', rotorOf(view)).value;
  const lag = rotor.inertia / dampingAt(carried, hover.motor.speed);
  const underLoad = drive.motor.underLoad ?? drive.motor;
  const inertia = (axis: 'roll' | 'pitch' | 'yaw') =>
    known(`the inertia of ${axis}`, bodyOf(view, axis)).value.inertia;
  const spacing = known('craft.motor-spacing', view.quantity('craft.motor-spacing'));
  const steps = 20;
  const atRest = (left: number) => {
    const above = Math.max(
      1,
      pack.atRest.findIndex(({ charge: at }) => at >= left),
    );
    const [one, other] = [pack.atRest[above - 1]!, pack.atRest[above]!];
    const share = (left - one.charge) / (other.charge - one.charge);
    return pack.cells * (one.voltage + share * (other.voltage - one.voltage));
  };
  const atOneSecond = pack.resistance + pack.leads;
  const slow = (pack.inFlight - 1) * pack.resistance;
  return {
    mass: weight / gravity,
    density: drive.airDensity,
    inertia: { roll: inertia('roll'), pitch: inertia('pitch'), yaw: inertia('yaw') },
    motors: motorsAt(
      spacing / 2 / Math.SQRT2,
      { ahead: 0, aside: 0 },
      view.word('motor.spin') === 'outward' ? 'outward' : 'inward',
    ),
    propeller: { ...drive.propeller, blades: view.count('prop.blades') ?? 2 },
    winding: {
      speedConstant: underLoad.speedConstant,
      resistance: underLoad.resistance,
      idleCurrent: drive.motor.idleCurrent,
    },
    rotorInertia: rotor.inertia,
    lag: { up: lag, down: 1.3 * lag },
    output: {
      idle: view.quantityOr('motor.idle', null) ?? 0.05,
      full: view.quantityOr('motor.output-limit', null) ?? 1,
    },
    pack: {
      open: Array.from({ length: steps + 1 }, (_, step) => atRest(pack.full * (1 - step / steps))),
      capacity: charge,
      used: 0.02,
      atOnce: 0.8 * atOneSecond,
      quick: { resistance: 0.2 * atOneSecond, seconds: 0.25 },
      slow: { resistance: slow, seconds: 4 },
      standing: drive.otherPower / drive.openVoltage,
    },
    board: {
      gyroRate: known('gyro.rate', view.quantity('gyro.rate')),
      controlRate: known('control.rate', view.quantity('control.rate')),
      gyroFilters: filtersOf(view, 'gyro'),
      derivativeFilters: filtersOf(view, 'derivative'),
      derivativeOf: view.word('derivative.input') === 'error' ? 'error' : 'turning',
      feedforwardFilters: feedforwardFilters(view),
      fade: fadeOf(view),
      shape: 0,
      late: { gyro: 0, output: 0 },
      gains: { roll: gainsOf(view, 'roll'), pitch: gainsOf(view, 'pitch'), yaw: gainsOf(view, 'yaw') },
    },
    shaking: { frame: [], sensor: 1e-4, air: 5e-4 },
    wind: { torque: 0.02, lift: 0.15, seconds: 0.4 },
    link: { interval: 1 / 125, lost: 0.002, gap: 0 },
  };
}

function known<T>(what: string, value: T | null): T {
  if (value === null) throw new Error(`the script does not say enough to simulate: ${what} is not known`);
  return value;
}

function filtersOf(view: CraftView, chain: ChainName): readonly SimulatedFilter[] {
  return stagesOf(view, chain).flatMap(({ path }): readonly SimulatedFilter[] => {
    const kind = view.word(`${path}.kind`);
    const of = (name: string) => known(`${path}.${name}`, view.quantity(`${path}.${name}`));
    if (kind === 'first-order' || kind === 'butterworth') return [{ kind, cutoff: of('cutoff') }];
    if (kind === 'notch') return [{ kind, centre: of('centre'), width: of('width') }];
    if (kind === 'follow-motors')
      return [{ kind, tones: view.count(`${path}.tones`) ?? 1, from: of('from'), width: of('width') }];
    if (kind === 'none') return [];
    throw new Error(`${path}.kind: the simulator has no filter of the kind ${kind}`);
  });
}

function feedforwardFilters(view: CraftView): readonly SimulatedFilter[] {
  const cutoff = view.quantityOr('control.feedforward-cutoff', null);
  return cutoff === null ? [] : [{ kind: 'first-order', cutoff }];
}

function fadeOf(view: CraftView): GainFade | null {
  const of = (name: string) => view.quantityOr(`control.when.high-throttle.${name}`, null);
  const from = of('from');
  if (from === null) return null;
  const share = (name: string) => of(name) ?? 1;
  return {
    from,
    proportional: share('proportional'),
    integral: share('integral'),
    derivative: share('derivative'),
  };
}

function gainsOf(view: CraftView, axis: 'roll' | 'pitch' | 'yaw'): SimulatedGains {
  const of = (name: string) => view.quantityOr(`control.${axis}.${name}`, 0) ?? 0;
  return {
    proportional: of('proportional'),
    integral: of('integral'),
    derivative: of('derivative'),
    feedforward: of('feedforward'),
  };
}
