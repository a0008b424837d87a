import type { MotorWork, RecordingReport } from '../../server/src/lsp/recording-protocol';
import { drawing, element } from '../page/element';
import { question } from './answer';
import { measuredWords } from './measured';
import { likelyText, shareText } from './measured-text';
import { table } from './table';

/** Do the motors work alike? */
export function motorsSection({ motors }: RecordingReport): HTMLElement {
  return question('motors', motors, shortOf, (all) => [
    table(
      'How hard each motor works',
      [
        'Motor',
        'Works at',
        'On the mean, from idle to full',
        'Harder than all',
        'At full',
        'At idle',
        'Time constant',
      ],
      all.map((motor) => [
        String(motor.motor),
        measuredWords(motor.mean),
        bar(motor),
        measuredWords(motor.harder),
        shareText(motor.atFull),
        shareText(motor.atIdle),
        motor.lag.told === null
          ? element('span', { class: 'aside words' }, `not known: ${motor.lag.reason} ${motor.lag.advice}`)
          : measuredWords(motor.lag.told),
      ]),
    ),
  ]);
}

function shortOf(all: readonly MotorWork[]): string {
  const size = ({ harder }: MotorWork) => Math.abs(harder.likely);
  const most = [...all].sort((one, other) => size(other) - size(one))[0];
  if (most === undefined) return '';
  const { motor, harder } = most;
  // Where the span holds zero, none of them can be told from the others.
  if (harder.low <= 0 && harder.high >= 0) return 'yes, as far as can be told';
  return `motor ${motor} differs most: ${likelyText(harder)}`;
}

/** A dot at what is likely, a line from low to high, and the ends of what a motor can be told. */
function bar({ mean }: MotorWork): SVGElement {
  const most = mean.unit === '%' ? 100 : 1;
  const x = (value: number) => String(Math.min(100, Math.max(0, (100 * value) / most)));
  return drawing(
    'svg',
    { class: 'bar', viewBox: '0 0 100 10', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    drawing('rect', { class: 'track', x: '0', y: '3', width: '100', height: '4' }),
    drawing('rect', { class: 'filled', x: '0', y: '3', width: x(mean.likely), height: '4' }),
    drawing('line', { class: 'hair', x1: x(mean.low), x2: x(mean.high), y1: '5', y2: '5' }),
  );
}
