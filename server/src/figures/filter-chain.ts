import type { CraftView } from '../craft/view';
import { butterworthLowpass, type DigitalFilter, firstOrderLowpass } from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { type ChainName, isSaid, isUnfiltered, kindOf, type Stage, stageAt, stagesOf } from './filter-stages';
import { type Following, notchAt, searchedNotches, toneNotches } from './following-notches';
import { type Model, model } from './model';
import { turnsAt } from './turning';

/** What filters do, one after the other. */
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
  /** Between the gyro and the controller. */
  readonly gyro: Working;
  /** On the derivative alone, behind the gyro's; null: nothing is known of them. */
  readonly derivative: Working | null;
  /** How often a second the motors turn in the hover; null: not known, or nothing follows them. */
  readonly hover: number | null;
}

/** Null while the gyro's filters or their rate are not known. */
export const chainsOf = model<[], Chains>('filters', (own) => {
  const gyro = chainOf(own, 'gyro');
  if (gyro === null) return null;
  const derivative = chainOf(own, 'derivative');
  const follows = gyro.value.follows || derivative?.value.follows === true;
  const value: Chains = {
    gyro: gyro.value,
    derivative: derivative?.value ?? null,
    hover: follows ? hoverOf(own) : null,
  };
  return { value, assumed: [...new Set([...gyro.assumed, ...(derivative?.assumed ?? [])])] };
});

/** One chain; null where the script says nothing of it, or not enough of one of its filters. */
export const chainOf = model<[ChainName], Working>('filter chain', (view, chain) => {
  if (isUnfiltered(view, chain)) return { value: passing };
  if (isSaid(view, chain)) return workingTogether(view, stagesOf(view, chain));
  view.noteMissing(`${stageAt(chain, 1).path}.kind`);
  return null;
});

/** Filters one after the other. Null where one of them is not known. */
function workingTogether(view: CraftView, stages: readonly Stage[]): Model<Working> | null {
  const models = stages.flatMap((stage) => workingOf(view, stage) ?? []);
  if (models.length < stages.length) return null;
  const parts = models.map(({ value }) => value);
  return {
    value: {
      all: (turns) => joined(parts.map(({ all }) => all(turns))),
      own: (turns) => joined(parts.map(({ own }) => own(turns))),
      follows: parts.some(({ follows }) => follows),
    },
    assumed: [...new Set(models.flatMap(({ assumed }) => assumed))],
  };
}

/** Quicker than flattening, and asked for hundreds of times a sheet. */
function joined(lists: readonly (readonly DigitalFilter[])[]): readonly DigitalFilter[] {
  const all: DigitalFilter[] = [];
  for (const filters of lists) for (const filter of filters) all.push(filter);
  return all;
}

/** Each by itself, so that a change of one leaves what is known of the others. */
const workingAt = model<[chain: ChainName, number: number], Working>('filter', (own, chain, number) => {
  const stage = stageAt(chain, number);
  const samples = own.quantity(stage.rate);
  if (samples === null || samples <= 0) return null;
  const kind = kindOf(own, stage);
  switch (kind) {
    case 'follow-motors':
      return following(own, toneNotches(own, stage, samples), toneWords);
    case 'follow-noise':
      return following(own, searchedNotches(own, stage, samples), searchWords);
    case 'notch':
      return fixed(notchOf(own, stage, samples));
    case 'none':
      return { value: passing };
    default:
      return kind === null ? null : fixed(lowpassOf(own, stage, kind, samples));
  }
});

export function workingOf(view: CraftView, { chain, number }: Stage): Model<Working> | null {
  return workingAt(view, chain, number);
}

const toneWords = 'notches on motor tones, one set a motor, where they stand in the hover';
const searchWords = 'searching notches on the motors’ own tones, as far as their band goes';

const passing: Working = { all: () => [], own: () => [], follows: false };

function fixed(filters: readonly DigitalFilter[] | null) {
  return filters === null ? null : { value: { all: () => filters, own: () => filters, follows: false } };
}

function following(view: CraftView, notches: Following | null, words: string) {
  if (notches === null) return null;
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

function lowpassOf(view: CraftView, { path }: Stage, kind: string, rate: number) {
  const cutoff = view.quantity(`${path}.cutoff`);
  return cutoff === null ? null : lowpassAt(cutoff, kind, rate);
}

/** None where it would lie beyond what samples can tell. */
export function lowpassAt(cutoff: number, kind: string | null, rate: number): readonly DigitalFilter[] {
  if (cutoff <= 0 || cutoff >= halfRate(rate)) return [];
  return [(kind === 'first-order' ? firstOrderLowpass : butterworthLowpass)(cutoff, rate)];
}

function notchOf(view: CraftView, { path }: Stage, rate: number) {
  const centre = view.quantity(`${path}.centre`);
  const width = view.quantity(`${path}.width`);
  return centre === null || width === null ? null : notchAt(centre, width, rate);
}
