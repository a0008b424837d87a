import type { VideoBand } from '../catalog/model/hardware';
import type { CraftView } from '../craft/view';
import { decibelsOverMilliwatt, radiatedPower } from '../physics/decibel';
import { freeSpaceLoss, freeSpaceRange, receivedPower } from '../physics/radio-link';
import { shortNumber } from '../units/number-text';
import { parseQuantity } from '../units/quantity';
import type { FigureSource } from './figure';
import { sentPower } from './video-power';
import { fine } from './why';

/** Where the picture is sent and how strongly. */
export const videoFigures: readonly FigureSource[] = [
  {
    id: 'video-frequency',
    title: 'Video carrier',
    unit: 'MHz',
    from: ['video.frequency', 'video.channel', 'video.band'],
    hint: { at: ['video.channel'], words: (figure) => figure },
    concerns: sendsPicture,
    compute(view) {
      const carrier = videoCarrier(view);
      if (carrier === null) return null;
      return { likely: carrier.frequency / 1e6, why: carrier.why };
    },
  },
  {
    id: 'video-radiated-power',
    title: 'Radiated video power (e.i.r.p.)',
    unit: 'mW',
    from: ['video.power', 'video.locked', 'video.antenna-gain'],
    concerns: sendsPicture,
    compute(view) {
      const sent = sentPower(view);
      const gain = view.quantity('video.antenna-gain');
      if (sent === null || gain === null) return null;
      const { power } = sent;
      const radiated = radiatedPower(power, gain);
      const why = `${fine(power, 'mW')} × 10^(${fine(gain, 'dBi')} / 10), the gain of the antenna in dBi`;
      return {
        likely: radiated * 1e3,
        low: Math.min(power, radiated) * 1e3,
        high: radiated * 2e3,
        why,
        assumed: [...sent.assumed, ...makersTolerance],
      };
    },
  },
  {
    id: 'video-range',
    title: 'Distance at which the picture is lost, nothing in between',
    unit: 'm',
    from: [
      'video.power',
      'video.locked',
      'video.antenna-gain',
      'video.receiver-antenna-gain',
      'video.receiver-sensitivity',
    ],
    concerns: sendsPicture,
    compute(view) {
      const link = pictureLink(view);
      if (link === null) return null;
      const { sent, gains, needed, frequency, budget, assumed } = link;
      const why = `10^((${budget}) / 20) × ${lightText} / (4 × π × ${fine(frequency, 'MHz')}), from ${budgetWords}`;
      const range = (spare: number) => freeSpaceRange(sent + gains - needed - spare, frequency);
      return {
        likely: range(0),
        low: range(usualFade),
        high: range(0),
        why,
        assumed: [...assumed, fadeAssumed],
      };
    },
  },
  {
    id: 'video-margin',
    title: 'Link margin at 100 m',
    unit: 'dB',
    isSigned: true,
    from: ['video.power', 'video.locked', 'video.receiver-sensitivity'],
    concerns: sendsPicture,
    compute(view) {
      const link = pictureLink(view);
      if (link === null) return null;
      const { sent, gains, needed, frequency, budget, assumed } = link;
      const why = `${budget} - 20 × lg(4 × π × 100 m × ${fine(frequency, 'MHz')} / ${lightText}), ${budgetWords} less the loss over the way`;
      const margin = receivedPower(sent, gains, freeSpaceLoss(100, frequency)) - needed;
      return {
        likely: margin,
        low: margin - usualFade,
        high: margin,
        why,
        assumed: [...assumed, fadeAssumed],
      };
    },
  },
];

/** Many craft have no camera. */
function sendsPicture({ craft }: CraftView): boolean {
  return craft.hasGroup('video');
}

/** Of light, for a formula. */
const lightText = '299792 km/s';

const budgetWords = 'power sent, both antennas and what the goggles need, in dB';

/** dB that a body, a branch or a reflection takes. Common practice. */
const usualFade = 20;
const fadeAssumed = `branches, bodies and reflections may take ${usualFade} dB of the picture`;

/** The way of the picture: powers in dB over 1 mW, gains in dB, Hz. */
function pictureLink(view: CraftView) {
  const transmitter = sentPower(view);
  const own = view.quantity('video.antenna-gain');
  const other = view.quantity('video.receiver-antenna-gain');
  const sensitivity = view.quantity('video.receiver-sensitivity');
  const carrier = videoCarrier(view);
  if (transmitter === null || own === null || other === null || sensitivity === null || carrier === null)
    return null;
  if (sensitivity <= 0) return null;
  const { frequency } = carrier;
  const { power, assumed } = transmitter;
  const [sent, needed] = [decibelsOverMilliwatt(power), decibelsOverMilliwatt(sensitivity)];
  const budget = [sent, own, other, -needed].map((one) => shortNumber(one, 4)).join(' + ');
  return { sent, gains: own + other, needed, frequency, budget, assumed };
}

const makersTolerance = [
  'a transmitter may send up to twice its printed power, and its antenna may gain nothing',
];

/** A carrier in Hz with what it is called and where the script says so. */
export interface VideoCarrier {
  readonly frequency: number;
  /** Hz taken on either side. */
  readonly halfWidth: number;
  /** "channel 6 of band r", or "the carrier" where only a frequency is given. */
  readonly name: string;
  readonly path: string;
  readonly why: string;
}

/** Where the picture is sent; null where the script does not say, or says it in a way that isn't understood. */
export function videoCarrier(view: CraftView): VideoCarrier | null {
  const band = bandOf(view);
  const halfWidth = (band && parseQuantity(band.halfWidth)?.value) ?? usualHalfWidth;
  if (view.isSet('video.frequency')) {
    const frequency = view.quantity('video.frequency');
    if (frequency === null) return null;
    const why = 'video.frequency, as the script sets it';
    return { frequency, halfWidth, name: 'The carrier', path: 'video.frequency', why };
  }
  const channel = view.count('video.channel');
  const frequency = band === undefined || channel === null ? null : plannedFrequency(band, channel);
  if (band === undefined || frequency === null) return null;
  const why = `${fine(frequency, 'MHz')}, channel ${channel} in the plan of band ${band.name}`;
  return {
    frequency,
    halfWidth,
    name: `Channel ${channel} of band ${band.name}`,
    path: 'video.channel',
    why,
  };
}

/** Hz of a channel in a band's plan, counted from 1; null where the band has no such channel. */
export function plannedFrequency(band: VideoBand, channel: number): number | null {
  const text = band.channels[channel - 1];
  return text === undefined ? null : (parseQuantity(text)?.value ?? null);
}

export function bandOf(view: CraftView): VideoBand | undefined {
  return view.catalog.videoBand(view.word('video.band') ?? '');
}

/** Hz on either side of an analogue picture's carrier: assumed, as in every band of the catalogue. */
export const usualHalfWidth = 9e6;
