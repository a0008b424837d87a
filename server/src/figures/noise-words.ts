import type { CraftView } from '../craft/view';
import { kindOf, type Stage } from './filter-stages';
import { type CutoffChange, type NoiseLeft, type NoiseThrough, noiseThrough } from './noise-through';

/** What the craft's own filters leave of the motors' noise, in sentences; empty where there is none to say. */
export interface NoiseWords {
  /** What each chain lets through. */
  readonly gyro: string;
  readonly derivative: string;
  readonly left: string;
  /** What another cutoff would bring, of each chain. */
  readonly gyroChange: string;
  readonly derivativeChange: string;
  /** What to write so that it can be told. */
  readonly asks: string;
}

const nothing: NoiseWords = {
  gyro: '',
  derivative: '',
  left: '',
  gyroChange: '',
  derivativeChange: '',
  asks: '',
};

/** For hot motors on a flight with the pack in view. */
export function noiseWords(view: CraftView): {
  readonly words: NoiseWords;
  readonly through: NoiseThrough | null;
} {
  const asking = view.anew();
  const through = noiseThrough(asking);
  if (through === null) return { words: { ...nothing, asks: asksFor(asking) }, through };
  const { tone, filters, left, changes } = through;
  const ofChain = (chain: Stage['chain']) => {
    const shares = filters
      .filter(({ stage }) => stage.chain === chain)
      .map((one) => `${cutText(view, one.stage)} lets ${view.short(one.through, '%')} of it through`);
    return shares.join(', ');
  };
  const changeOf = (chain: Stage['chain']) => {
    const [best] = changes
      .filter(({ stage }) => stage.chain === chain)
      .sort((one, other) => one.delay - other.delay);
    return best === undefined ? '' : changeText(view, left, best);
  };
  return {
    words: {
      gyro: `In the hover a motor hums at about ${view.short(tone, 'Hz')}: ${ofChain('gyro') || 'nothing of the gyro filters it'}.`,
      derivative: ofChain('derivative') === '' ? '' : `Of what is left ${ofChain('derivative')}.`,
      left: leftText(view, left),
      gyroChange: changeOf('gyro'),
      derivativeChange: changeOf('derivative'),
      asks: '',
    },
    through,
  };
}

/** All of them, one after the other. */
export function noiseSentences(words: NoiseWords): readonly string[] {
  return Object.values<string>({ ...words }).filter((text) => text !== '');
}

/** `gyro.filter.1.cutoff = 150 Hz` */
function cutText(view: CraftView, stage: Stage): string {
  const setting = cutSettingOf(view, stage);
  return `${setting} = ${view.shown(setting)}`;
}

/** What says how much a filter takes. */
export function cutSettingOf(view: CraftView, stage: Stage): string {
  const kind = kindOf(view, stage);
  return `${stage.path}.${kind === 'first-order' || kind === 'butterworth' ? 'cutoff' : 'width'}`;
}

function leftText(view: CraftView, { axis, amount }: NoiseLeft): string {
  return axis === null
    ? `The gains get ${shareOf(view, axis, amount)} of it.`
    : `For each deg/s of that hum at the gyro the gains of ${axis} move the motors by ${shareOf(view, axis, amount)}.`;
}

function shareOf(view: CraftView, axis: NoiseLeft['axis'], amount: number): string {
  return view.short(axis === null ? amount : amount / 100, '%');
}

function changeText(
  view: CraftView,
  { axis }: NoiseLeft,
  { stage, to, left, delay, phase }: CutoffChange,
): string {
  const margin =
    phase === null || axis === null ? '' : ` and about ${view.short(phase, 'deg')} of ${axis}’s phase margin`;
  return `${cutSettingOf(view, stage)} = ${view.short(to, 'Hz')} would leave ${shareOf(view, axis, left)}, half the heat of this noise, for ${view.short(delay, 'ms')} more delay${margin}.`;
}

function asksFor(asking: CraftView): string {
  const { missing } = asking.lacking;
  return missing.length === 0 || missing.length > 4
    ? ''
    : `How much the filters let through is told once the script has ${missing.join(' and ')}.`;
}
