import { uncapitalised } from '../units/capitals';
import { ofAxes } from './axis-names';
import { stageDelayId } from './filter-figures';
import { filterNumbers } from './filter-stages';

/** What pilots call figures that are told together, in the order in which they ask for them. */
const topics: readonly (readonly [words: string, ids: readonly string[]])[] = [
  [
    'hover',
    [
      'hover-throttle',
      'hover-speed',
      'hover-current',
      'hover-power',
      'hover-motor-efficiency',
      'disc-loading',
      'hover-voltage-full',
    ],
  ],
  ['thrust', ['thrust-to-weight-full', 'thrust-to-weight', 'thrust-to-weight-landing', 'full-thrust']],
  [
    'minutes',
    ['minutes-to-landing', 'minutes-to-warning', 'minutes-to-landing-cold', 'minutes-to-warning-cold'],
  ],
  ['flying time', ['flying-minutes-to-landing', 'flying-minutes-to-warning', 'flying-power']],
  [
    'range',
    [
      'range',
      'reach',
      'turn-back-charge',
      'range-speed',
      'endurance-speed',
      'cruise-power',
      'top-speed',
      'tilt-speed',
    ],
  ],
  ['currents', ['full-current', 'full-motor-current', 'full-sag', 'least-voltage']],
  ['brown-outs of the board', ['drop-out-room']],
  ['speeds', ['full-speed', 'tip-speed', 'tip-mach', 'pitch-speed']],
  [
    'the motors’ heat',
    [
      'full-throttle-seconds',
      'hover-copper-loss',
      'hover-iron-loss',
      'hover-controller-loss',
      'full-copper-loss',
      'full-iron-loss',
      'full-controller-loss',
    ],
  ],
  ['how warm the motors get', ['bell-as-flown', 'winding-as-flown', 'winding-after-full-throttle']],
  ['motor tones', ['hover-tone', 'hover-blade-tone', 'full-tone', 'full-blade-tone', 'full-blade-alias']],
  ['the motor tone at idle', ['idle-tone', 'idle-tone-left']],
  [
    'what filters leave of the tones',
    ['hover-tone-left', 'hover-blade-tone-left', 'full-tone-left', 'full-blade-tone-left'],
  ],
  ['motor lag', ['motor-lag']],
  ['delays', ['loop-delay', 'stick-delay']],
  ['margins', ofAxes('crossover', 'phase-margin', 'delay-phase', 'gain-margin', 'overshoot', 'noise-gain')],
  ['rates at the sticks', ofAxes('centre-slope', 'end-rate', 'step')],
  ['control frames', ['receiver-frame-interval', 'receiver-frame-time']],
  ['voltages of the pack', ['pack-full-voltage', 'pack-nominal-voltage', 'divider-at-full-pack']],
  ['motor speed without a load', ['no-load-speed']],
  [
    'delay of filters',
    [
      'gyro-filter-delay',
      'derivative-filter-delay',
      ...filterNumbers.flatMap((number) => [
        stageDelayId('gyro', number),
        stageDelayId('derivative', number),
      ]),
    ],
  ],
  ['the picture', ['video-frequency', 'video-radiated-power', 'video-range', 'video-margin']],
];

const topicOf = new Map(
  topics.flatMap(([words, ids], rank) => ids.map((id) => [id, { words, rank }] as const)),
);

/** What a figure is told under, and its place among the others. */
export interface Topic {
  /** `hover`, `minutes`; a figure that is told alone by its title. */
  readonly words: string;
  readonly rank: number;
}

export function topicOfFigure(id: string, title: string): Topic {
  const alone = { words: uncapitalised(title), rank: topics.length };
  return topicOf.get(id) ?? alone;
}
