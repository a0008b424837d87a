import type { CraftView } from '../craft/view';
import { chainDelay, chainGain, type DigitalFilter } from '../physics/filter';
import { alias, aliasSpan, halfRate } from '../physics/sampling';
import { shortText } from '../units/quantity';
import { axisNames } from './axis-names';
import { beyondModel } from './beyond-model';
import type { Computed, FigureSource } from './figure';
import { chainOf, chainsOf, type Working, workingOf } from './filter-chain';
import { type ChainName, chains, filterNumbers, isSaid, stageAt } from './filter-stages';
import { filtersText } from './filter-words';
import type { Model } from './model';
import { type FlightState, turnsAt } from './turning';
import { fine } from './why';

/** Hz: where a pilot's corrections lie; what a filter costs is shown there. Common practice. */
export const steeringTone = 30;

const gyroSettings = settingsOf('gyro');

export const filterFigures: readonly FigureSource[] = [
  delay('gyro', 'Delay of the gyro’s filters'),
  delay('derivative', 'Delay of the derivative’s own filters'),
  tone('hover-tone', 'Motor tone in the hover', 1, 'hover'),
  tone('hover-blade-tone', 'Blades passing in the hover', 'blades', 'hover'),
  tone('full-tone', 'Motor tone at full throttle, full pack', 1, 'full'),
  tone('full-blade-tone', 'Blades passing at full throttle, full pack', 'blades', 'full'),
  {
    id: 'full-blade-alias',
    title: 'Blades passing at full throttle, full pack, as the gyro sees them',
    unit: 'Hz',
    from: ['gyro.rate', 'prop.blades', 'motor.kv'],
    compute(view) {
      const rate = view.quantity('gyro.rate');
      const heard = toneOf(view, 'blades', 'full');
      if (rate === null || rate <= 0 || heard === null) return null;
      const { likely, low = likely, high = likely, assumed = [] } = heard;
      const passes = Math.round(likely / rate);
      return {
        likely: alias(likely, rate),
        ...aliasSpan(low, high, rate),
        // Of their difference few digits are left.
        why: `|${shortText(likely, 'Hz', 7)} - ${passes} × ${shortText(rate, 'Hz', 7)}|`,
        assumed,
      };
    },
  },
  {
    id: 'idle-tone',
    title: 'Motor tone at idle',
    unit: 'Hz',
    from: ['motor.idle', 'motor.idle-speed', 'motor.kv'],
    compute: (view) => turnsAt(view, 'idle'),
  },
  left('idle-tone-left', 'Motor tone at idle, filtered', 1, 'idle'),
  left('hover-tone-left', 'Motor tone in the hover, filtered', 1, 'hover'),
  left('hover-blade-tone-left', 'Blades passing in the hover, filtered', 'blades', 'hover'),
  left('full-tone-left', 'Motor tone at full throttle, full pack, filtered', 1, 'full'),
  left('full-blade-tone-left', 'Blades passing at full throttle, full pack, filtered', 'blades', 'full'),
  ...filterNumbers.map((number) => stageDelay('gyro', number, `Delay of gyro filter ${number}`)),
  ...filterNumbers.map((number) => stageDelay('derivative', number, `Delay of derivative filter ${number}`)),
];

/** What a chain hangs on: the parameters of its filters, and the rate at which they work. */
function settingsOf(chain: ChainName): readonly string[] {
  const filter = `${chain}.filter.<number>`;
  return [`${filter}.cutoff`, `${filter}.width`, `${filter}.kind`, chains[chain]];
}

/** Delay at the steering tone: likely in the hover, and what notches that follow make of it from full throttle to idle. */
function delayOf(view: CraftView, working: Model<Working> | null): Computed | null {
  if (working === null) return null;
  const { value, assumed } = working;
  const delayAt = (turns: number | null) => 1e3 * chainDelay({ filters: value.all(turns) }, steeringTone);
  const hover = value.follows ? (turnsAt(view, 'hover')?.likely ?? null) : null;
  const likely = delayAt(hover);
  // The slower the motors, the longer a notch on their tone delays.
  const [idle, full] = hover === null ? [null, null] : [turnsAt(view, 'idle'), turnsAt(view, 'full')];
  const ends = [idle?.low ?? idle?.likely, full?.high ?? full?.likely];
  const delays = [likely, ...ends.flatMap((turns) => (turns === undefined ? [] : [delayAt(turns)]))];
  const filters = value.all(hover);
  return {
    likely,
    low: Math.min(...delays),
    high: Math.max(...delays),
    why:
      filters.length === 0
        ? 'nothing is filtered'
        : `group delay at ${steeringTone} Hz: ${filtersText(filters)}`,
    assumed,
  };
}

function delay(chain: ChainName, title: string): FigureSource {
  return {
    id: `${chain}-filter-delay`,
    title,
    unit: 'ms',
    from: settingsOf(chain),
    concerns: (view) => chain === 'gyro' || filtersDerivative(view),
    compute: (view) => delayOf(view, chainOf(view, chain)),
  };
}

/** Whether there is a derivative, or anything is said of its filters. */
function filtersDerivative(view: CraftView): boolean {
  const hasPart = axisNames.some((name) => view.quantityOr(`control.${name}.derivative`, 0) !== 0);
  return hasPart || isSaid(view, 'derivative');
}

/** What one filter of a chain adds, shown at the setting that turns it up or down. */
function stageDelay(chain: ChainName, number: number, title: string): FigureSource {
  const stage = stageAt(chain, number);
  const { path } = stage;
  return {
    id: stageDelayId(chain, number),
    title,
    unit: 'ms',
    member: { collection: `${chain}.filter`, name: `${number}` },
    from: [`${path}.cutoff`, `${path}.width`, `${path}.kind`],
    hint: { at: [`${path}.cutoff`, `${path}.width`], words: (figure) => `adds ${figure}` },
    compute(view) {
      const delay = delayOf(view, workingOf(view, stage));
      return delay === null || delay.likely === 0 ? null : delay;
    },
  };
}

/** `gyro-filter-2-delay` */
export function stageDelayId(chain: ChainName, number: number): string {
  return `${chain}-filter-${number}-delay`;
}

export type Harmonic = 1 | 'blades';

/** How often a turn the noise comes: once for what is out of balance, once for each blade. */
function harmonicOf(view: CraftView, harmonic: Harmonic): number | null {
  return harmonic === 1 ? 1 : view.count('prop.blades');
}

/** Hz of a motor's tone, or of its blades passing; null: not known. */
export function toneOf(view: CraftView, harmonic: Harmonic, state: FlightState): Computed | null {
  const turns = turnsAt(view, state);
  const times = harmonicOf(view, harmonic);
  if (turns === null || times === null) return null;
  const { likely, low = likely, high = likely, assumed = [] } = turns;
  const why = times === 1 ? turns.why : `${times} × ${fine(likely, 'Hz')}`;
  return { likely: times * likely, low: times * low, high: times * high, why, assumed };
}

function tone(id: string, title: string, harmonic: Harmonic, state: FlightState): FigureSource {
  const from = ['motor.kv', 'prop.diameter', 'prop.blades', 'pack.<name>.cells'];
  return {
    id,
    title,
    unit: 'Hz',
    from,
    whyNot: beyondModel,
    compute: (view) => toneOf(view, harmonic, state),
  };
}

/** Shares by which a motor runs ahead of or behind what its notch was set for. Common practice. */
export const strays = { least: 0.01, usual: 0.02, most: 0.04 };

/** What filters leave of a tone (Hz), dB. */
export function chainDecibels(filters: readonly DigitalFilter[], frequency: number): number {
  return decibels(chainGain({ filters }, frequency));
}

function decibels(gain: number): number {
  return 20 * Math.log10(Math.max(Number.MIN_VALUE, gain));
}

function left(id: string, title: string, harmonic: Harmonic, state: FlightState): FigureSource {
  return {
    id,
    title,
    unit: 'dB',
    isSigned: true,
    from: [...gyroSettings, 'prop.blades'],
    whyNot(view) {
      const [heard, rate] = [toneOf(view, harmonic, state), view.quantity('gyro.rate')];
      if (heard === null || rate === null) return beyondModel(view);
      return `The tone lies above half of gyro.rate: the filters see it folded down.`;
    },
    compute(view) {
      const known = chainsOf(view);
      const turns = turnsAt(view, state);
      const heard = toneOf(view, harmonic, state);
      const rate = view.quantity('gyro.rate');
      if (known === null || turns === null || heard === null || rate === null) return null;
      if (heard.likely >= halfRate(rate)) return null;
      const { gyro } = known.value;
      const times = heard.likely / turns.likely;
      const likely = leftOf(gyro.own(turns.likely), heard.likely, strays.usual);
      // The tone is a guess: so is whether it meets a notch that stands still, and how far a low-pass reaches.
      let [low, high] = [likely, likely];
      for (const speed of between(turns.low ?? turns.likely, turns.high ?? turns.likely)) {
        const filters = gyro.own(speed);
        low = Math.min(low, leftOf(filters, times * speed, strays.least));
        high = Math.max(high, leftOf(filters, times * speed, strays.most));
      }
      return {
        likely,
        low,
        high,
        why: leftText(gyro.own(turns.likely), heard.likely),
        assumed: [...new Set([...known.assumed, ...(heard.assumed ?? [])])],
      };
    },
  };
}

/** What is left (dB) at the loudest within a share of a tone (Hz): never right at the middle of a notch, where nothing would be. */
function leftOf(filters: readonly DigitalFilter[], tone: number, share: number): number {
  const chain = { filters };
  return decibels(Math.max(chainGain(chain, (1 - share) * tone), chainGain(chain, (1 + share) * tone)));
}

function leftText(filters: readonly DigitalFilter[], tone: number): string {
  return filters.length === 0
    ? `nothing filters ${fine(tone, 'Hz')}`
    : `gain ${100 * strays.usual} % beside ${fine(tone, 'Hz')}: ${filtersText(filters)}`;
}

/** As many speeds of a span as tell where a notch is met. */
const looks = 10;

/** Values from end to end of a span. */
export function between(low: number, high: number, steps = looks): readonly number[] {
  return Array.from({ length: steps + 1 }, (_, step) => low + (step / steps) * (high - low));
}
