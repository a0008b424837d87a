import type { CraftView } from '../craft/view';
import { butterworthLowpass, type DigitalFilter, firstOrderLowpass } from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { followers, lowpasses, notches, type Stage, workingCutoff } from './filter-stages';
import { notchAt, toneNotches, trackedNotches } from './following-notches';
import { type Model, model } from './model';
import { turnsAt } from './turning';

/** What one section of filters does. */
export interface Working {
  /** With motors that all turn so often a second; null: that is not known. */
  readonly all: (turns: number | null) => readonly DigitalFilter[];
  /** Those that surely meet the tone of one motor. */
  readonly own: (turns: number) => readonly DigitalFilter[];
  /** Whether they move with the motors. */
  readonly follows: boolean;
}

/** The filters of the craft. */
export interface Chains {
  /** Between the gyro and the controller, with motors that turn so often a second. */
  readonly gyro: (turns: number | null) => readonly DigitalFilter[];
  /** Those of them that surely meet the tone of one motor. */
  readonly gyroForOneMotor: (turns: number) => readonly DigitalFilter[];
  /** On the derivative alone, behind the gyro's. */
  readonly derivative: readonly DigitalFilter[];
  /** How often a second the motors turn in the hover; null: not known, or nothing follows them. */
  readonly hover: number | null;
}

/** The sections that work once for each step of the loop, or once for each sample of the gyro. */
export function stagesAt(view: CraftView, rate: Stage['rate']): readonly Stage[] {
  return [...lowpasses, ...notches(view), ...followers].filter((stage) => stage.rate === rate);
}

/** Null while the rate is not known: a filter works at one. */
export const chainsOf = model<[], Chains>('filters', (own) => {
  const gyro = workingTogether(own, stagesAt(own, 'gyro.rate'));
  const derivative = workingTogether(own, stagesAt(own, 'control.rate'));
  if (gyro === null || derivative === null) return null;
  const value: Chains = {
    gyro: gyro.value.all,
    gyroForOneMotor: gyro.value.own,
    derivative: derivative.value.all(null),
    hover: gyro.value.follows ? hoverOf(own) : null,
  };
  return { value, assumed: [...new Set([...gyro.assumed, ...derivative.assumed])] };
});

/** Stages one after the other. Null where one of them is not known. */
export function workingTogether(view: CraftView, stages: readonly Stage[]): Model<Working> | null {
  const models = stages.flatMap((stage) => workingOf(view, stage) ?? []);
  if (models.length < stages.length) return null;
  const parts = models.map(({ value }) => value);
  return {
    value: {
      all: (turns) => parts.flatMap(({ all }) => all(turns)),
      own: (turns) => parts.flatMap(({ own }) => own(turns)),
      follows: parts.some(({ follows }) => follows),
    },
    assumed: [...new Set(models.flatMap(({ assumed }) => assumed))],
  };
}

/** Each by itself, so that a change of one leaves what is known of the others. */
const workingOf = model<[stage: Stage], Working>('filter', (own, { path, rate }) => {
  const samples = own.quantity(rate);
  if (samples === null || samples <= 0) return null;
  switch (path) {
    case 'gyro.tones':
      return following(own, toneNotches(own, samples), toneWords);
    case 'gyro.tracker':
      return following(own, trackedNotches(own, samples), trackerWords);
    default:
      return { value: fixed((path.includes('notch') ? notchOf : lowpassOf)(own, path, samples)) };
  }
});

const toneWords = 'notches on motor tones, one set a motor, where they stand in the hover';
const trackerWords = 'tracked notches on the motors’ own tones, as far as their band goes';

function fixed(filters: readonly DigitalFilter[]): Working {
  return { all: () => filters, own: () => filters, follows: false };
}

function following(view: CraftView, notches: ReturnType<typeof toneNotches>, words: string) {
  if (notches === null) return { value: fixed([]) };
  const { all, own } = notches;
  const value: Working = { all: (turns) => (turns === null ? [] : all(turns)), own, follows: true };
  const isKnown = hoverOf(view) !== null;
  return {
    value,
    assumed: [
      isKnown ? words : 'notches that follow the motors left out: the speed of the motors is not known',
    ],
  };
}

function hoverOf(view: CraftView): number | null {
  return turnsAt(view, 'hover')?.likely ?? null;
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
