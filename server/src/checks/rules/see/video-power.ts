import type { CraftView } from '../../../craft/view';
import { type VideoCarrier, videoCarrier } from '../../../figures/video';
import { radiatedPower } from '../../../physics/decibel';
import type { Amount } from '../../../units/distinct-texts';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';
import { clearChannel } from './clear-channel';
import { isCentreIn, licenceText, type Permit, permits, unlisted } from './radio-permits';

/** Transmitter power against the region's limit; a limit is one of radiated power, antenna and all. */
export const videoPowerRules: readonly CodeRule[] = [
  {
    ids: [
      'see/power-above-limit',
      'see/power-above-listed',
      'see/radiated-above-limit',
      'see/radiated-above-limit-assumed',
    ],
    scope: 'craft',
    check(view, report) {
      const power = view.quantity('video.power');
      const carrier = videoCarrier(view);
      const inside = carrier === null ? [] : (permits(view) ?? []).filter((one) => isCentreIn(one, carrier));
      const [best] = [...inside].sort((one, other) => other.limit - one.limit);
      if (power === null || carrier === null || best === undefined) return;
      const finding =
        powerFinding(view, { power, carrier, best }) ?? antennaFinding(view, { power, carrier, best });
      if (finding !== null) report(finding);
    },
  },
];

interface Sending {
  readonly power: number;
  readonly carrier: VideoCarrier;
  /** The permit with the highest limit at this frequency. */
  readonly best: Permit;
}

/** Room for rounding in a limit that was computed from a field strength. */
const rounding = 1.02;

function powerFinding(view: CraftView, { power, carrier, best }: Sending): RuleFinding | null {
  if (power <= best.limit * rounding) return null;
  const isListed = view.word('rules.region') !== unlisted;
  const isPlain = isListed && view.word('rules.licence') === 'none';
  const place = `for ${regionTitle(view)} ${licenceText(view)}`;
  return {
    id: isPlain ? 'see/power-above-limit' : 'see/power-above-listed',
    at: 'video.power',
    values: {
      power: view.shown('video.power'),
      frequency: view.exact(carrier.frequency, 'MHz'),
      region: regionTitle(view),
      limit: limitText(view, best.limit),
      where: isListed ? place : 'for countries without a list of their own',
    },
    related: [{ at: 'rules.region', message: 'The region.' }],
    get fixes() {
      return [...turnDown(view, best.limit), ...clearChannel(view.anew())];
    },
  };
}

/** An antenna that the script names is a risk; where the plainest one is assumed, there is less to hold against the pilot. */
function antennaFinding(view: CraftView, { power, carrier, best }: Sending): RuleFinding | null {
  const gain = view.quantity('video.antenna-gain');
  if (gain === null || radiatedPower(power, gain) <= best.limit * rounding) return null;
  const isSaid = view.isSet('video.antenna-gain');
  return {
    id: isSaid ? 'see/radiated-above-limit' : 'see/radiated-above-limit-assumed',
    at: 'video.power',
    values: {
      power: view.shown('video.power'),
      gain: view.shown('video.antenna-gain'),
      radiated: view.amount(radiatedPower(power, gain), 'mW'),
      region: regionTitle(view),
      frequency: view.exact(carrier.frequency, 'MHz'),
      limit: limitText(view, best.limit),
      best: limitText(view, radiatedPower(best.limit, -gain)),
    },
    related: isSaid ? [{ at: 'video.antenna-gain', message: "The antenna's gain." }] : [],
  };
}

function regionTitle(view: CraftView): string {
  return view.catalog.region(view.word('rules.region') ?? '')?.title ?? '';
}

/** In milliwatts, and below a thousandth of one in decibels, so that no row of zeros comes out. */
function limitText(view: CraftView, limit: number): Amount {
  return view.amount(limit, limit < 1e-6 ? 'dBm' : 'mW');
}

/** Offered only where a transmitter can be expected to have such a step. */
function turnDown(view: CraftView, limit: number): readonly RuleFix[] {
  if (limit < 1e-3) return [];
  const to = view.exact(limit, 'mW');
  return [{ title: 'Turn it down to {to}', set: 'video.power', to }];
}
