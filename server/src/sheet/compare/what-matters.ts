import { ofAxes } from '../../figures/axis-names';
import type { FindingChanges, RenderedFinding } from './finding-changes';
import type { MovedFigure } from './moved-figures';

/** One of the few things that a pilot should know first of a comparison. */
export type Matter =
  | { readonly kind: 'gained' | 'lost'; readonly finding: RenderedFinding }
  | { readonly kind: 'moved'; readonly figure: MovedFigure };

const most = 3;

/** Figures that a pilot decides by; of those in one row the one that moves most speaks for all. Common practice. */
const decisive: readonly (readonly string[])[] = [
  ['thrust-to-weight', 'thrust-to-weight-landing'],
  ['hover-throttle'],
  ['minutes-to-warning', 'minutes-to-landing', 'minutes-to-landing-cold', 'minutes-to-warning-cold'],
  ['reach', 'range'],
  ['stick-delay', 'loop-delay', 'gyro-filter-delay', 'derivative-filter-delay'],
  ofAxes('swings', 'phase-margin', 'gain-margin', 'overshoot'),
  ['hover-tone-left', 'full-tone-left', ...ofAxes('noise-gain')],
  ['full-motor-current', 'full-sag'],
  ['video-range', 'video-margin'],
];

/** Must-fix findings and risks that come, then those that go, then figures: what gets worse first, then by size. */
export function whatMatters(
  { gained, lost }: FindingChanges,
  figures: readonly MovedFigure[],
): readonly Matter[] {
  const isGrave = ({ level }: RenderedFinding) => level === 'must-fix' || level === 'risk';
  const spokesmen = new Set(
    decisive.flatMap((row) => figures.find(({ id, turn }) => turn !== null && row.includes(id)) ?? []),
  );
  const all: readonly Matter[] = [
    ...gained.filter(isGrave).map((finding) => ({ kind: 'gained', finding }) as const),
    ...lost.filter(isGrave).map((finding) => ({ kind: 'lost', finding }) as const),
    ...figures.filter((one) => spokesmen.has(one)).map((figure) => ({ kind: 'moved', figure }) as const),
  ];
  return all.slice(0, most);
}
