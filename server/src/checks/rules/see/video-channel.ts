import type { CraftView } from '../../../craft/view';
import { bandOf, plannedFrequency, type VideoCarrier, videoCarrier } from '../../../figures/video';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFinding } from '../../rule';
import { clearChannel } from './clear-channel';
import {
  bandsText,
  isCentreIn,
  isTouchedBy,
  isWholeIn,
  licenceText,
  type Permit,
  permits,
  unlisted,
} from './radio-permits';

/** The video channel: that it exists, is said once, and lies in a band that is open. */
export const videoChannelRules: readonly CodeRule[] = [
  {
    ids: ['see/no-such-channel'],
    scope: 'craft',
    check(view, report) {
      const band = bandOf(view);
      const channel = view.count('video.channel');
      if (band === undefined || channel === null || plannedFrequency(band, channel) !== null) return;
      const values = { band: band.name, count: String(band.channels.length), channel: String(channel) };
      const related = [{ at: 'video.band', message: 'The band.' }];
      report({ id: 'see/no-such-channel', at: 'video.channel', values, related });
    },
  },
  {
    ids: ['see/channel-incomplete'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const [band, channel] = ['video.band', 'video.channel'];
      const [has, lacks] = view.isSet(band) ? [band, channel] : [channel, band];
      if (!view.isSet(has) || !view.isMissing(lacks) || isBoards(view, has)) return;
      report({ id: 'see/channel-incomplete', at: has, values: { has, lacks, value: view.shown(has) } });
    },
  },
  {
    ids: ['see/frequency-disagrees'],
    scope: 'craft',
    check(view, report) {
      const band = bandOf(view);
      const channel = view.count('video.channel');
      const frequency = view.quantityOr('video.frequency', null);
      const plan = band === undefined || channel === null ? null : plannedFrequency(band, channel);
      if (band === undefined || plan === null || frequency === null || Math.abs(plan - frequency) < 0.5e6)
        return;
      report({
        id: 'see/frequency-disagrees',
        at: 'video.frequency',
        values: {
          channel: String(channel),
          band: band.name,
          plan: view.exact(plan, 'MHz'),
          frequency: view.shown('video.frequency'),
        },
        related: [{ at: 'video.channel', message: 'The channel.' }],
        fixes: [{ title: 'Write {to}', set: 'video.frequency', to: view.exact(plan, 'MHz') }],
      });
    },
  },
  {
    ids: ['see/outside-band', 'see/band-edge', 'see/outside-common-band'],
    scope: 'craft',
    check(view, report) {
      const carrier = videoCarrier(view);
      const open = permits(view);
      if (carrier === null || open === null || open.some((permit) => isWholeIn(permit, carrier))) return;
      report({
        ...outside(view, carrier, open),
        get fixes() {
          return clearChannel(view.anew());
        },
      });
    },
  },
  {
    ids: ['see/unsure-permit'],
    scope: 'craft',
    check(view, report) {
      const carrier = videoCarrier(view);
      if (carrier === null) return;
      for (const permit of permits(view) ?? []) {
        if (permit.unsure === null || !isTouchedBy(permit, carrier)) continue;
        report(unsure(view, carrier, permit, permit.unsure));
      }
    },
  },
  {
    ids: ['see/plan-not-known'],
    scope: 'craft',
    check(view, report) {
      const band = view.word('video.band');
      const plans = view.words('video.plans');
      if (band === null || plans === null || plans.includes(band)) return;
      const values = { band, plans: listed(plans) };
      const related = [{ at: 'video.plans', message: 'The plans that it knows.' }];
      report({ id: 'see/plan-not-known', at: 'video.band', values, related });
    },
  },
];

/** Whether the board's text says it, which may then say the rest in settings whose meaning nobody has told. */
function isBoards(view: CraftView, path: string): boolean {
  return view.craft.holdsUnsaid() && view.setting(path)?.origin.script.isBoardText === true;
}

function unsure(view: CraftView, carrier: VideoCarrier, permit: Permit, why: string): RuleFinding {
  return {
    id: 'see/unsure-permit',
    at: carrier.path,
    values: {
      channel: carrier.name,
      frequency: view.exact(carrier.frequency, 'MHz'),
      region: regionTitle(view),
      band: bandsText(view, [permit], carrier.frequency),
      why,
    },
    related: [{ at: 'rules.region', message: 'The region.' }],
  };
}

function regionTitle(view: CraftView): string {
  return view.catalog.region(view.word('rules.region') ?? '')?.title ?? '';
}

function outside(view: CraftView, carrier: VideoCarrier, open: readonly Permit[]): RuleFinding {
  const { frequency, halfWidth, name, path } = carrier;
  const edge = open.some((permit) => isCentreIn(permit, carrier)) ? 'see/band-edge' : 'see/outside-band';
  return {
    id: view.word('rules.region') === unlisted ? 'see/outside-common-band' : edge,
    at: path,
    values: {
      channel: name,
      frequency: view.exact(frequency, 'MHz'),
      low: view.exact(frequency - halfWidth, 'MHz'),
      high: view.exact(frequency + halfWidth, 'MHz'),
      region: regionTitle(view),
      licence: licenceText(view),
      bands: bandsText(view, open, frequency),
    },
    related: [{ at: 'rules.region', message: 'The region.' }],
  };
}
