import type { CraftView } from '../craft/view';
import type { Gains } from '../physics/loop';
import { model } from './model';
import type { OperatingPoint } from './operating-points';

/** Shares of the gains while something lasts, at some throttles. */
export interface Situation {
  /** Before the place; empty for ordinary flight. */
  readonly words: string;
  readonly holds: (point: OperatingPoint) => boolean;
  /** Shares at a throttle that the pilot asks for. */
  readonly gains: (gains: Gains, demand: number) => Gains;
}

export const gainParts = ['proportional', 'integral', 'derivative'] as const;

/** Ordinary flight, and those situations in which the script has the gains otherwise. Null: one can't be read. */
export const situationsOf = model<[], readonly Situation[]>('situations', (own) => {
  const high = sharesOf(own, 'high-throttle');
  const jumps = sharesOf(own, 'throttle-jumps');
  const turns = sharesOf(own, 'fast-turn');
  const zero = sharesOf(own, 'zero-throttle');
  if (high === null || jumps === null || turns === null || zero === null) return null;
  const isFlight = ({ throttle }: OperatingPoint) => throttle !== 'idle';
  const faded = (gains: Gains, demand: number) => {
    const way = high.from < 1 ? Math.max(0, Math.min(1, (demand - high.from) / (1 - high.from))) : 0;
    return scaled(gains, (part) => 1 + way * (high.shares[part] - 1));
  };
  const changed = (
    words: string,
    { from, shares }: Shares,
    holds: Situation['holds'],
  ): readonly Situation[] =>
    Number.isFinite(from) && gainParts.some((part) => shares[part] !== 1)
      ? [{ words, holds, gains: (gains, demand) => scaled(faded(gains, demand), (part) => shares[part]) }]
      : [];
  const situations: readonly Situation[] = [
    { words: '', holds: isFlight, gains: faded },
    ...changed('while the throttle jumps', jumps, isFlight),
    ...changed('in a fast turn', turns, isFlight),
    ...changed('with the throttle at zero', { ...zero, from: 0 }, ({ throttle }) => throttle === 'idle'),
  ];
  return { value: situations };
});

interface Shares {
  /** Where the situation begins; infinite where the script says of no beginning. */
  readonly from: number;
  readonly shares: Gains;
}

function sharesOf(view: CraftView, situation: string): Shares | null {
  const path = (word: string) => `control.when.${situation}.${word}`;
  const from = view.quantityOr(path('from'), Number.POSITIVE_INFINITY);
  const [proportional, integral, derivative] = gainParts.map((part) => view.quantityOr(path(part), 1));
  if (from === null || proportional == null || integral == null || derivative == null) return null;
  return { from, shares: { proportional, integral, derivative } };
}

function scaled(gains: Gains, share: (part: (typeof gainParts)[number]) => number): Gains {
  return {
    proportional: gains.proportional * share('proportional'),
    integral: gains.integral * share('integral'),
    derivative: gains.derivative * share('derivative'),
  };
}
