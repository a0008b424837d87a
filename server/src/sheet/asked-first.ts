import type { Comparison } from './compare/compare';
import type { MovedFigure } from './compare/moved-figures';
import { air, load } from './variants';

/** What a load or the cold costs, in the order in which a pilot asks. */
const asked = [
  'minutes-to-landing',
  'minutes-to-warning',
  'flying-minutes-to-landing',
  'reach',
  'thrust-to-weight-full',
  'thrust-to-weight-landing',
  'hover-throttle',
  'hover-power',
  'full-sag',
];

/** Whether a craft is looked at with another load or in other air. */
export function isVariant(path: string): boolean {
  return path === load || path === air;
}

/** What is asked of a load or the cold before all else, as they were. */
export function askedFirst(moved: readonly MovedFigure[]): readonly [MovedFigure[], MovedFigure[]] {
  const first = asked.flatMap((id) => moved.find((one) => one.id === id) ?? []);
  return [first, moved.filter((one) => !first.includes(one))];
}

/**
 * A craft beside the same with a load or in the cold: of findings what matters most, of figures what a pilot asks
 * first. What moves none of these, such as a filter, is told by what matters most.
 */
export function withAskedFirst(comparison: Comparison): Comparison {
  const { matters, figures } = comparison;
  const moved = matters.flatMap((one) => (one.kind === 'moved' ? [one.figure] : []));
  const [first, others] = askedFirst([...moved, ...figures]);
  if (first.length === 0) return comparison;
  return {
    ...comparison,
    matters: [
      ...matters.filter(({ kind }) => kind !== 'moved'),
      ...first.map((figure) => ({ kind: 'moved', figure }) as const),
    ],
    figures: others,
  };
}
