import type { CraftView } from '../craft/view';
import {
  butterworthLowpass,
  type DigitalFilter,
  firstOrderLowpass,
  notch as notchFilter,
} from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { carriedBy } from './drive';
import { hover } from './drive-figures';
import { lowpasses, notches, type Stage, workingCutoff } from './filter-stages';
import { type Model, modelOf } from './model';

/** The filters of the craft, as they work in the hover. */
export interface Chains {
  readonly gyro: readonly DigitalFilter[];
  /** On the derivative alone, behind the gyro's. */
  readonly derivative: readonly DigitalFilter[];
}

/** Null while a rate is not known: a filter works at one. */
export function chainsOf(view: CraftView): Model<Chains> | null {
  return modelOf(view, 'filters', (own) => {
    const gyroRate = own.quantity('gyro.rate');
    const controlRate = own.quantity('control.rate');
    if (gyroRate === null || gyroRate <= 0 || controlRate === null || controlRate <= 0) return null;
    const assumed: string[] = [];
    const fixed = (rate: Stage['rate'], value: number) => [
      ...lowpasses.filter((stage) => stage.rate === rate).flatMap(({ path }) => lowpassOf(own, path, value)),
      ...notches(own)
        .filter((stage) => stage.rate === rate)
        .flatMap(({ path }) => notchOf(own, path, value)),
    ];
    const gyro = [...fixed('gyro.rate', gyroRate), ...toneNotches(own, gyroRate, assumed)];
    if ((own.count('gyro.tracker.count') ?? 0) > 0)
      assumed.push('the tracked notches left out: nobody knows where they stand');
    return { value: { gyro, derivative: fixed('control.rate', controlRate) }, assumed };
  });
}

function lowpassOf(view: CraftView, path: string, rate: number): readonly DigitalFilter[] {
  const cutoff = workingCutoff(view, path);
  if (cutoff === null || cutoff <= 0 || cutoff >= halfRate(rate)) return [];
  const make = view.word(`${path}.shape`) === 'first-order' ? firstOrderLowpass : butterworthLowpass;
  return [make(cutoff, rate)];
}

function notchOf(view: CraftView, path: string, rate: number): readonly DigitalFilter[] {
  const centre = view.quantity(`${path}.centre`);
  const width = view.quantity(`${path}.width`);
  return centre === null || width === null ? [] : notchAt(centre, width, rate);
}

/** None where it would lie beyond what samples can tell. */
function notchAt(centre: number, width: number, rate: number): readonly DigitalFilter[] {
  const half = halfRate(rate);
  const fits = centre > 0 && centre < half && width > 0 && width < half;
  return fits ? [notchFilter(centre, width, rate)] : [];
}

/** Notches that follow the motors: one set a motor; in the hover all motors turn alike, and so do their sets. */
function toneNotches(view: CraftView, rate: number, assumed: string[]): readonly DigitalFilter[] {
  const count = view.count('gyro.tones.harmonics') ?? 0;
  const lowest = view.quantity('gyro.tones.from');
  const width = view.quantity('gyro.tones.width');
  if (count === 0 || lowest === null || width === null || view.flag('esc.speed-feedback') !== true) return [];
  const carried = carriedBy(view);
  const speed = carried === null ? undefined : hover(carried.value.likely)?.motor.speed;
  if (carried === null || speed === undefined) {
    assumed.push('the notches on motor tones left out: the speed of the motors is not known');
    return [];
  }
  assumed.push('notches on motor tones as they stand in the hover, one set for all motors');
  const tone = speed / (2 * Math.PI);
  return Array.from({ length: count }, (_, index) =>
    notchAt(Math.max(lowest, (index + 1) * tone), width, rate),
  ).flat();
}
