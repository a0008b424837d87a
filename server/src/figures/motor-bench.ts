import type { CraftView } from '../craft/view';
import { airDensity, gravity, standardPressure, standardTemperature } from '../physics/atmosphere';
import {
  type BenchRow,
  dragByPower,
  type FittedLaw,
  loadedResistance,
  type PowerFit,
  powerFit,
  squareLaw,
  voltFit,
} from '../physics/bench-table';
import { controllerLoss } from './controller-loss';

/** Air in which makers measure. */
export const benchAir = airDensity(standardPressure(0), standardTemperature(0));

/** What speaks against a maker's table. */
export type BenchFault =
  /** Too few rows to fit anything to. */
  | { readonly kind: 'few'; readonly rows: number }
  /** More comes out at the shaft than any motor turns over of what goes in. */
  | { readonly kind: 'gain'; readonly share: number }
  /** The rows follow another speed constant (rad/s a volt) than is printed. */
  | { readonly kind: 'kv'; readonly found: number }
  /** The torque is the current times a number: nobody measured it. */
  | { readonly kind: 'torque' };

/** A maker's table with what it tells of the motor and its propeller. */
export interface Bench {
  readonly rows: readonly BenchRow[];
  readonly fault: BenchFault | null;
  /** Whether torques are there from which no winding comes. */
  readonly hidesWinding: boolean;
  /** Of winding and friction, by the watts. */
  readonly power: PowerFit | null;
  /** Of the propeller, N s² and N m s². */
  readonly thrust: FittedLaw | null;
  readonly drag: FittedLaw | null;
  /** The row at full throttle with its speed. */
  readonly full: BenchRow | null;
}

/** Null where there is no table, or kv is not known. */
export function benchOf(view: CraftView): Bench | null {
  const members = view.members('motor.bench');
  if (members.length === 0) return null;
  const speedConstant = view.quantity('motor.kv');
  if (speedConstant === null) return null;
  const read = [...members]
    .sort((one, other) => Number(one) - Number(other))
    .flatMap((member) => rowOf(view, `motor.bench.${member}`) ?? []);
  const fault = faultOf(read, speedConstant);
  const rows = fault === null ? read : fault.kind === 'torque' ? read.map(withoutTorque) : [];
  const stand = { speedConstant, controllerLoss: controllerLoss.likely };
  const told = powerFit(rows, stand);
  const power = told === null || told.doubt > mostDoubt ? null : told;
  const turned = rows.filter(({ torque, speed }) => torque !== null && speed !== null);
  return {
    rows,
    fault,
    hidesWinding: turned.length >= fewest && power === null,
    power,
    thrust: squareLaw(rows, 'thrust'),
    drag: squareLaw(rows, 'torque'),
    full: rows.find(({ throttle, speed }) => throttle !== null && throttle > 0.995 && speed !== null) ?? null,
  };
}

/** A winding is taken from a table whose rows tell it to a third, as a standard error. */
const mostDoubt = 1 / 3;
const fewest = 3;

const tellingColumns = ['voltage', 'current', 'speed', 'torque'];

/** The fewest rows of a table from which winding and friction come, by their watts. */
export const tellingRows: readonly string[] = Array.from({ length: fewest }, (_, index) =>
  tellingColumns.map((column) => `motor.bench.${index + 1}.${column}`),
).flat();

export const tellingRowsInWords = {
  words: 'three rows of the maker’s table',
  detail: ' (motor.bench.<number>) with voltage, current, speed and torque',
};

function rowOf(view: CraftView, path: string): BenchRow | null {
  const part = (name: string) => view.quantityOr(`${path}.${name}`, null);
  const [voltage, current, mass] = [part('voltage'), part('current'), part('thrust')];
  const [speed, torque, throttle] = [part('speed'), part('torque'), part('throttle')];
  if (voltage === null || current === null || (mass === null && speed === null)) return null;
  return { voltage, current, thrust: mass === null ? null : mass * gravity, speed, torque, throttle };
}

function withoutTorque(row: BenchRow): BenchRow {
  return { ...row, torque: null };
}

/** Motors turn no more than this share of what goes in into work at the shaft, with their controllers. */
const mostWork = 0.93;
/** Rows may part from the printed kv by this share: working motors come to a sixth below it. */
const mostApart = 0.25;
/** A torque that is the current times a number stays the same so closely, over currents that differ so much. */
const computed = { within: 5e-3, over: 1.5 };

function faultOf(rows: readonly BenchRow[], speedConstant: number): BenchFault | null {
  if (rows.length < fewest) return { kind: 'few', rows: rows.length };
  if (isComputed(rows)) return { kind: 'torque' };
  const share = Math.max(
    ...rows.map(
      ({ voltage, current, speed, torque }) => ((speed ?? 0) * (torque ?? 0)) / (voltage * current),
    ),
  );
  if (share > mostWork) return { kind: 'gain', share };
  const most = Math.max(...rows.map(({ voltage, speed }) => (speed ?? 0) / voltage));
  if (most > speedConstant) return { kind: 'kv', found: most };
  const volts = voltFit(rows, speedConstant);
  if (volts === null || Math.abs(volts.speedConstant / speedConstant - 1) <= mostApart) return null;
  return { kind: 'kv', found: volts.speedConstant };
}

function isComputed(rows: readonly BenchRow[]): boolean {
  const told = rows.filter(({ torque }) => torque !== null);
  const currents = told.map(({ current }) => current);
  if (told.length < fewest || Math.max(...currents) < computed.over * Math.min(...currents)) return false;
  const ratios = told.map(({ torque, current }) => (torque ?? 0) / current);
  return Math.max(...ratios) - Math.min(...ratios) <= computed.within * Math.max(...ratios);
}

/** What the volts at full throttle are lost by, ohm, and with which speed constant (rad/s a volt); null without. */
export function benchUnderLoad(
  { full }: Bench,
  resistance: number,
  speedConstant: number,
): { readonly resistance: number; readonly speedConstant: number } | null {
  const found = full === null ? null : loadedResistance(full, speedConstant);
  if (full === null || found === null || full.speed === null) return null;
  if (found >= resistance) return { resistance: found, speedConstant };
  const left = full.voltage - resistance * full.current;
  return left <= 0 ? null : { resistance, speedConstant: full.speed / left };
}

/** The propeller's drag by the watts, of a motor whose winding (ohm) and friction (Nm) are known. */
export function benchDrag(
  { rows }: Bench,
  motor: { readonly speedConstant: number; readonly resistance: number; readonly friction: number },
  thrustLaw: number,
): FittedLaw | null {
  return dragByPower(rows, { ...motor, controllerLoss: controllerLoss.likely }, ({ speed, thrust }) => {
    if (speed !== null) return speed;
    return thrust === null ? null : Math.sqrt(thrust / thrustLaw);
  });
}
