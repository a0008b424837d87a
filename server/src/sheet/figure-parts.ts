import type { CraftView } from '../craft/view';
import { figureOf } from '../figures';
import { ofAxes } from '../figures/axis-names';
import { stageDelayId } from '../figures/filter-figures';
import { filterNumbers } from '../figures/filter-stages';
import { warmingSentences } from '../figures/heat-words';
import type { WithheldWithReason } from './not-known';
import { type FigureTable, figureTable, figureText, type PackColumn } from './which-pack';

/** Parts that answer in figures. */
export interface FigurePart extends FigureTable {
  readonly id: 'my-hands' | 'how-late' | 'stay-cool' | 'who-sees-me';
  readonly title: string;
  readonly answer: string;
  /** What the figures come to, and what would change them, in sentences. */
  readonly told: readonly string[];
  /** Those that a pilot looks at first; the others stand folded away. */
  readonly key: readonly string[];
  readonly caution: string;
}

interface FigurePartPlan {
  readonly id: FigurePart['id'];
  readonly title: string;
  /** The figure that answers the question in short, and what stands behind it. */
  readonly short: readonly [id: string, words: string];
  readonly key: readonly string[];
  /** All, the key ones among them. */
  readonly figures: readonly string[];
  readonly caution: string;
  /** Sentences about the craft with the pack in view, or the first. */
  readonly tell?: (view: CraftView) => readonly string[];
}

const video = ['video-frequency', 'video-radiated-power', 'video-range', 'video-margin'];

const estimated = 'Estimates are estimates: hover test, then feel the motors.';

const parts: readonly FigurePartPlan[] = [
  {
    id: 'my-hands',
    title: 'What do my hands do?',
    short: ['stick-delay', 'from stick to thrust'],
    key: ['stick-delay', ...ofAxes('end-rate')],
    figures: [
      'stick-delay',
      'receiver-frame-interval',
      'receiver-frame-time',
      ...ofAxes('centre-slope', 'end-rate', 'step'),
    ],
    caution: 'Sticks and switches are proved with the propellers off, channel by channel.',
  },
  {
    id: 'how-late',
    title: 'How late, how quiet?',
    short: ['loop-delay', 'from a turn to thrust'],
    key: [
      'loop-delay',
      'gyro-filter-delay',
      'motor-lag',
      'hover-tone',
      'hover-tone-left',
      'full-blade-tone-left',
      ...ofAxes('swings', 'crossover', 'phase-margin', 'overshoot'),
    ],
    figures: [
      'loop-delay',
      'gyro-filter-delay',
      ...filterNumbers.map((number) => stageDelayId('gyro', number)),
      'derivative-filter-delay',
      ...filterNumbers.map((number) => stageDelayId('derivative', number)),
      'control-period',
      'motor-signal-time',
      'motor-lag',
      'idle-tone',
      'idle-tone-left',
      'hover-tone',
      'hover-tone-left',
      'hover-blade-tone',
      'hover-blade-tone-left',
      'full-tone',
      'full-tone-left',
      'full-blade-tone',
      'full-blade-tone-left',
      'full-blade-alias',
      ...ofAxes(
        'swings',
        'crossover',
        'phase-margin',
        'delay-phase',
        'gain-margin',
        'overshoot',
        'noise-gain',
      ),
    ],
    caution: estimated,
  },
  {
    id: 'stay-cool',
    title: 'Do my motors stay cool?',
    short: ['full-throttle-seconds', 'of full throttle at the least'],
    key: ['full-throttle-seconds', 'winding-as-flown', 'winding-after-full-throttle', 'bell-as-flown'],
    figures: [
      'full-throttle-seconds',
      'full-throttle-held',
      'winding-as-flown',
      'winding-after-full-throttle',
      'bell-as-flown',
      'hover-copper-loss',
      'hover-iron-loss',
      'full-copper-loss',
      'full-iron-loss',
      'hover-controller-loss',
      'full-controller-loss',
    ],
    tell: warmingSentences,
    caution:
      'Not computed: how warm the speed controllers get, since nobody knows what cools them. Estimates are estimates: hover test, then feel the motors.',
  },
  {
    id: 'who-sees-me',
    title: 'Who sees me?',
    short: ['video-frequency', 'for the picture'],
    key: video,
    figures: video,
    caution: 'Local radio rules and your licence decide. This is no legal advice.',
  },
];

/** The parts that have a figure, or would have one if more were known. */
export function figureParts(
  packs: readonly PackColumn[],
  unknown: readonly WithheldWithReason[],
  view: CraftView,
): readonly FigurePart[] {
  return parts.flatMap(({ id, title, short: [figureId, words], key, figures, caution, tell }) => {
    const table = figureTable(packs, unknown, figures, key);
    const { rows, shared, withheld } = table;
    if (rows.length + shared.length + withheld.length === 0) return [];
    const figure = figureOf(view, figureId);
    const isWithheld = withheld.some((one) => one.id === figureId);
    const answer = figure === null ? (isWithheld ? 'not known yet' : '') : `${figureText(figure)} ${words}`;
    const told = tell?.(view.pack === null ? (packs[0]?.view ?? view) : view) ?? [];
    return [{ id, title, answer, told, ...table, key, caution }];
  });
}
