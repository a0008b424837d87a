import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { chainDelay } from '../physics/filter';
import { frameTime } from '../physics/serial';
import { beyondModel } from './beyond-model';
import type { Computed, FigureSource } from './figure';
import { chainsOf, workingOf } from './filter-chain';
import { steeringTone } from './filter-figures';
import { isUnfiltered, kindOf, stagesOf } from './filter-stages';
import { model } from './model';
import { motorLagOf } from './motor-lag';
import { commandSeconds, controlWait } from './motor-signal';
import { linkOf } from './receiver';
import { fine } from './why';

/** One wait on the way from cause to thrust, s. */
interface Wait {
  readonly what: string;
  readonly likely: number;
  readonly low: number;
  readonly high: number;
}

interface Waits {
  readonly waits: readonly Wait[];
  readonly assumed: readonly string[];
}

/** From a turn of the craft to the thrust against it; null while a part of the way is not known. */
export function loopWaits(view: CraftView): Waits | null {
  const gyroRate = view.quantity('gyro.rate');
  const chains = chainsOf(view);
  const outputs = outputWaits(view);
  if (gyroRate === null || chains === null || outputs === null) return null;
  return {
    waits: [
      exact('gyro sampling', 0.5 / gyroRate),
      ...gyroFilterWaits(view, chains.value.hover),
      ...outputs.value,
    ],
    assumed: [...new Set([...chains.assumed, ...outputs.assumed])],
  };
}

/** From the loop's result to the thrust. */
const outputWaits = model<[], readonly Wait[]>('output waits', (own) => {
  const loop = controlWait(own);
  const command = commandSeconds(own);
  const lag = motorLagOf(own);
  if (loop === null || command === null || lag === null) return null;
  return {
    value: [
      exact('control loop', loop),
      exact('motor command', command),
      { what: 'motor and propeller', ...lag.value },
    ],
    assumed: lag.assumed,
  };
});

/** One after the other, as the turning rates run through them. */
function gyroFilterWaits(view: CraftView, turns: number | null): readonly Wait[] {
  if (isUnfiltered(view, 'gyro')) return [exact('no gyro filter', 0)];
  return stagesOf(view, 'gyro').map((stage) => {
    const filters = workingOf(view, stage)?.value.all(turns) ?? [];
    return exact(
      `gyro filter ${stage.number}, ${kindOf(view, stage)}`,
      chainDelay({ filters }, steeringTone),
    );
  });
}

/** From a move of the stick to the thrust that it asks for. */
export function stickWaits(view: CraftView): Waits | null {
  const link = linkOf(view);
  const outputs = outputWaits(view);
  if (link === undefined || outputs === null) return null;
  const interval = view.quantityOr('receiver.frame-interval', null) ?? inBase(link.frameInterval);
  const smoothing = view.quantityOr('receiver.smoothing', null);
  return {
    waits: [
      // A move falls anywhere between two frames.
      { what: 'age of the frame', likely: interval / 2, low: 0, high: interval },
      exact('frame on the line', frameTime(link.frameBytes, link, inBase(link.baud))),
      ...(smoothing === null ? [] : [exact('smoothing', smoothing)]),
      ...outputs.value,
    ],
    assumed: [...outputs.assumed, 'no time for the radio link itself, which its maker tells'],
  };
}

function exact(what: string, seconds: number): Wait {
  return { what, likely: seconds, low: seconds, high: seconds };
}

export const delayFigures: readonly FigureSource[] = [
  {
    id: 'loop-delay',
    title: 'From a turn to thrust',
    unit: 'ms',
    from: [
      'gyro.rate',
      'control.rate',
      'gyro.filter.<number>.cutoff',
      'esc.signal',
      'esc.update-rate',
      'motor.response-time',
    ],
    whyNot: beyondModel,
    compute: (view) => summed(loopWaits(view)),
  },
  {
    id: 'stick-delay',
    title: 'From the stick to thrust',
    unit: 'ms',
    from: ['receiver.link', 'receiver.frame-interval', 'control.rate', 'esc.signal', 'esc.update-rate'],
    whyNot: beyondModel,
    compute: (view) => summed(stickWaits(view)),
  },
];

function summed(found: Waits | null): Computed | null {
  if (found === null) return null;
  const sum = (of: (wait: Wait) => number) => 1e3 * found.waits.reduce((total, wait) => total + of(wait), 0);
  return {
    likely: sum(({ likely }) => likely),
    low: sum(({ low }) => low),
    high: sum(({ high }) => high),
    why: found.waits.map(({ what, likely }) => `${what}: ${fine(likely, 'ms')}`).join(' + '),
    assumed: found.assumed,
  };
}
