import type { CraftView } from '../craft/view';
import { butterworthLowpass, type DigitalFilter, firstOrderLowpass } from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { lowpasses, notches, type Stage, workingCutoff } from './filter-stages';
import { type Following, notchAt, toneNotches, trackedNotches } from './following-notches';
import { type Model, modelOf } from './model';
import { turnsAt } from './turning';

/** The filters of the craft. */
export interface Chains {
  /** Between the gyro and the controller, with motors that turn so often a second. */
  readonly gyro: (turns: number | null) => readonly DigitalFilter[];
  /** Those of them that surely meet the tone of one motor. */
  readonly gyroForOneMotor: (turns: number) => readonly DigitalFilter[];
  /** On the derivative alone, behind the gyro's. */
  readonly derivative: readonly DigitalFilter[];
  /** How often a second the motors turn in the hover; null: not known, and nothing follows them. */
  readonly hover: number | null;
  /** The single stages, by the section that sets them. */
  readonly stages: ReadonlyMap<string, (turns: number | null) => readonly DigitalFilter[]>;
}

/** Null while a rate is not known: a filter works at one. */
export function chainsOf(view: CraftView): Model<Chains> | null {
  return modelOf(view, 'filters', (own) => {
    const gyroRate = own.quantity('gyro.rate');
    const controlRate = own.quantity('control.rate');
    if (gyroRate === null || gyroRate <= 0 || controlRate === null || controlRate <= 0) return null;
    const rates = { 'gyro.rate': gyroRate, 'control.rate': controlRate };
    const fixed = new Map([
      ...lowpasses.map((stage) => [stage, lowpassOf(own, stage.path, rates[stage.rate])] as const),
      ...notches(own).map((stage) => [stage, notchOf(own, stage.path, rates[stage.rate])] as const),
    ]);
    const at = (rate: Stage['rate']) =>
      [...fixed].flatMap(([stage, made]) => (stage.rate === rate ? made : []));
    const following = new Map<string, Following>();
    const tones = toneNotches(own, gyroRate);
    const tracked = trackedNotches(own, gyroRate);
    if (tones !== null) following.set('gyro.tones', tones);
    if (tracked !== null) following.set('gyro.tracker', tracked);
    const hover = following.size === 0 ? null : (turnsAt(own, 'hover')?.likely ?? null);
    const ofAll = (turns: number | null) =>
      turns === null ? [] : [...following.values()].flatMap(({ all }) => all(turns));
    const gyro = at('gyro.rate');
    const value: Chains = {
      gyro: (turns) => [...gyro, ...ofAll(turns)],
      gyroForOneMotor: (turns) => [...gyro, ...[...following.values()].flatMap((each) => each.own(turns))],
      derivative: at('control.rate'),
      hover,
      stages: new Map([
        ...[...fixed].map(([{ path }, made]) => [path, () => made] as const),
        ...[...following].map(
          ([path, { all }]) => [path, (turns: number | null) => (turns === null ? [] : all(turns))] as const,
        ),
      ]),
    };
    return { value, assumed: assumedOf(following, hover) };
  });
}

function assumedOf(following: ReadonlyMap<string, Following>, hover: number | null): readonly string[] {
  if (following.size === 0) return [];
  if (hover === null)
    return ['notches that follow the motors left out: the speed of the motors is not known'];
  return [
    ...(following.has('gyro.tones')
      ? ['notches on motor tones, one set a motor, where they stand in the hover']
      : []),
    ...(following.has('gyro.tracker')
      ? ['tracked notches on the motors’ own tones, as far as their band goes']
      : []),
  ];
}

function lowpassOf(view: CraftView, path: string, rate: number): readonly DigitalFilter[] {
  const cutoff = workingCutoff(view, path);
  return cutoff === null ? [] : lowpassAt(cutoff, view.word(`${path}.shape`), rate);
}

/** None where it would lie beyond what samples can tell. */
export function lowpassAt(cutoff: number, shape: string | null, rate: number): readonly DigitalFilter[] {
  if (cutoff <= 0 || cutoff >= halfRate(rate)) return [];
  return [(shape === 'first-order' ? firstOrderLowpass : butterworthLowpass)(cutoff, rate)];
}

function notchOf(view: CraftView, path: string, rate: number): readonly DigitalFilter[] {
  const centre = view.quantity(`${path}.centre`);
  const width = view.quantity(`${path}.width`);
  return centre === null || width === null ? [] : notchAt(centre, width, rate);
}
