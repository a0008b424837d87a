import type { CraftView } from '../craft/view';
import { stateAtThrottle } from '../physics/drive';
import { chainDelay, chainGain, type DigitalFilter, groupDelay } from '../physics/filter';
import { alias, halfRate } from '../physics/sampling';
import { turnsPerSecond } from '../physics/tones';
import { carriedBy } from './drive';
import { full, hover } from './drive-figures';
import type { Computed, FigureSource } from './figure';
import { type Chains, chainsOf } from './filter-chain';

/** Hz: where a pilot's corrections lie; what a filter costs is told there. Common practice. */
export const steeringTone = 30;

const gyroSettings = ['gyro.lowpass.cutoff', 'gyro.lowpass.shape', 'gyro.second-lowpass.cutoff', 'gyro.rate'];
const derivativeSettings = ['derivative.lowpass.cutoff', 'derivative.lowpass.shape', 'control.rate'];

export const filterFigures: readonly FigureSource[] = [
  {
    id: 'gyro-filter-delay',
    title: 'Delay of the gyro’s filters',
    unit: 'ms',
    from: gyroSettings,
    compute: (view) => delayOf(view, ({ gyro }) => gyro),
  },
  {
    id: 'derivative-filter-delay',
    title: 'Delay of the derivative’s own filters',
    unit: 'ms',
    from: derivativeSettings,
    compute: (view) => delayOf(view, ({ derivative }) => derivative),
  },
  tone('hover-tone', 'Motor tone in the hover', 1, 'hover'),
  tone('hover-blade-tone', 'Blades passing in the hover', 'blades', 'hover'),
  tone('full-tone', 'Motor tone at full throttle', 1, 'full'),
  tone('full-blade-tone', 'Blades passing at full throttle', 'blades', 'full'),
  {
    id: 'full-blade-alias',
    title: 'Blades passing at full throttle, as the gyro sees them',
    unit: 'Hz',
    from: ['gyro.rate', 'prop.blades', 'motor.kv'],
    compute(view) {
      const rate = view.quantity('gyro.rate');
      const heard = toneOf(view, 'blades', 'full');
      if (rate === null || rate <= 0 || heard === null) return null;
      const why = `|f - rate × round(f / rate)| of ${view.short(heard.likely, 'Hz')} at ${view.short(rate, 'kHz')}`;
      return { likely: alias(heard.likely, rate), why, assumed: heard.assumed ?? [] };
    },
  },
  {
    id: 'idle-tone',
    title: 'Motor tone at idle',
    unit: 'Hz',
    from: ['motor.idle', 'motor.idle-speed', 'motor.kv'],
    compute: idleTone,
  },
  left('hover-tone-left', 'Motor tone in the hover, filtered', 1),
  left('hover-blade-tone-left', 'Blades passing in the hover, filtered', 'blades'),
];

function delayOf(view: CraftView, of: (chains: Chains) => readonly DigitalFilter[]): Computed | null {
  const chains = chainsOf(view);
  if (chains === null) return null;
  const filters = of(chains.value);
  const each = filters.map((filter) => view.short(groupDelay(filter, steeringTone), 'ms'));
  return {
    likely: 1e3 * chainDelay({ filters }, steeringTone),
    why: each.length === 0 ? 'no filter is on' : `at ${steeringTone} Hz: ${each.join(' + ')}`,
    assumed: chains.assumed,
  };
}

type Harmonic = 1 | 'blades';

/** How often a turn the noise comes: once for what is out of balance, once for each blade. */
function harmonicOf(view: CraftView, harmonic: Harmonic): number | null {
  return harmonic === 1 ? 1 : view.count('prop.blades');
}

function toneOf(view: CraftView, harmonic: Harmonic, state: 'hover' | 'full'): Computed | null {
  const carried = carriedBy(view);
  const times = harmonicOf(view, harmonic);
  if (carried === null || times === null) return null;
  const speed =
    state === 'hover' ? hover(carried.value.likely)?.motor.speed : full(carried.value.likely)?.motor.speed;
  if (speed === undefined) return null;
  const turns = turnsPerSecond(speed);
  const why = times === 1 ? `${view.short(speed, 'rpm')} / 60` : `${times} × ${view.short(turns, 'Hz')}`;
  // What is not known of the propellers moves the speed by a tenth or so: see the motor speeds.
  return {
    likely: times * turns,
    low: 0.9 * times * turns,
    high: 1.1 * times * turns,
    why,
    assumed: carried.assumed,
  };
}

/** Held speed, or what a small share of the throttle turns; from there up to full throttle the tones wander. */
function idleTone(view: CraftView): Computed | null {
  const held = view.quantity('motor.idle-speed');
  if (held !== null) return { likely: turnsPerSecond(held), why: `${view.shown('motor.idle-speed')} / 60` };
  const carried = carriedBy(view);
  const idle = view.quantity('motor.idle');
  if (carried === null || idle === null) return null;
  const { speed } = stateAtThrottle(carried.value.likely.drive, idle).motor;
  const likely = turnsPerSecond(speed);
  const why = `${view.short(speed, 'rpm')} at ${view.shown('motor.idle')} of throttle / 60`;
  return { likely, low: 0.7 * likely, high: 1.3 * likely, why, assumed: carried.assumed };
}

function tone(id: string, title: string, harmonic: Harmonic, state: 'hover' | 'full'): FigureSource {
  const from = ['motor.kv', 'prop.diameter', 'prop.blades', 'pack.<name>.cells'];
  return { id, title, unit: 'Hz', from, compute: (view) => toneOf(view, harmonic, state) };
}

/** Shares by which a motor runs ahead of or behind what its notch was set for. Common practice. */
export const strays = { least: 0.01, usual: 0.02, most: 0.04 };

function decibels(filters: readonly DigitalFilter[], frequency: number): number {
  return 20 * Math.log10(Math.max(Number.MIN_VALUE, chainGain({ filters }, frequency)));
}

function left(id: string, title: string, harmonic: Harmonic): FigureSource {
  return {
    id,
    title,
    unit: 'dB',
    isSigned: true,
    from: [...gyroSettings, 'prop.blades'],
    compute(view) {
      const chains = chainsOf(view);
      const heard = toneOf(view, harmonic, 'hover');
      const rate = view.quantity('gyro.rate');
      if (chains === null || heard === null || rate === null || heard.likely >= halfRate(rate)) return null;
      const { gyro } = chains.value;
      // Never right at the middle of a notch, where nothing at all would be left.
      const worst = (share: number) =>
        Math.max(...[1 - share, 1 + share].map((by) => decibels(gyro, by * heard.likely)));
      const [likely, low, high] = [worst(strays.usual), worst(strays.least), worst(strays.most)];
      return {
        likely,
        low: Math.min(likely, low),
        high: Math.max(likely, high),
        why: `gain of ${gyro.length} filters within ${100 * strays.usual} % of ${view.short(heard.likely, 'Hz')}`,
        assumed: [...new Set([...chains.assumed, ...(heard.assumed ?? [])])],
      };
    },
  };
}
