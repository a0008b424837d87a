import { inBase } from '../../../catalog/known-parameter';
import type { Link } from '../../../catalog/model/hardware';
import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { isSameVoltage, suppliedDevices, supplyPathOf } from '../../../figures/supply';
import type { CodeRule, RuleFix } from '../../rule';

/**
 * A receiver should get one of the voltages that its kind usually runs at. What its maker accepts decides where
 * the script says it (`outsideAccepted`); without that only the 3.3 V kind is surely harmed by more.
 */
const receiverSupply: CodeRule = {
  ids: ['wire/receiver-supply', 'wire/receiver-supply-unusual'],
  scope: 'pack',
  check(view, report) {
    const link = view.catalog.link(view.word('receiver.link') ?? '');
    const fed = feedOf(view, 'receiver');
    if (link === undefined || fed === null || view.isSet('wire.receiver.accepts')) return;
    const usual = link.supply.map(inBase);
    if (
      usual.length === 0 ||
      usual.some((one) => isSameVoltage(one, fed.low) && isSameVoltage(one, fed.high))
    )
      return;
    const most = Math.max(...usual);
    const isHarmed = most <= lowestKind && fed.high > most;
    const values = { link: link.name, usual: link.supply.join(' or '), given: fedText(view, fed) };
    const id = isHarmed ? 'wire/receiver-supply' : 'wire/receiver-supply-unusual';
    report({ id, at: fed.at, values, fixes: supplyFix(link, fed.at) });
  },
};

/** V, with some slack: receivers made for no more than this have no regulator that would bear more. */
const lowestKind = 3.4;

function supplyFix({ supply }: Link, set: string) {
  const [only, ...others] = supply;
  return only === undefined || others.length > 0 ? [] : [{ title: 'Feed it {to}', set, to: only }];
}

/** A position receiver bears anything between the voltages that its kind is made for. */
const positionSupply: CodeRule = {
  ids: ['wire/position-supply'],
  scope: 'craft',
  check(view, report) {
    const link = view.catalog.link(view.word('position.protocol') ?? '');
    const given = view.quantity('position.supply');
    if (link === undefined || given === null || link.supply.length === 0) return;
    const allowed = link.supply.map(inBase);
    const [least, most] = [Math.min(...allowed), Math.max(...allowed)];
    if (given >= 0.97 * least && given <= 1.05 * most) return;
    const values = {
      given: view.shown('position.supply'),
      least: view.amount(least, 'V'),
      most: view.amount(most, 'V'),
    };
    report({ id: 'wire/position-supply', at: 'position.supply', values });
  },
};

/** The same supply said in two places must be the same. */
const suppliesDisagree: CodeRule = {
  ids: ['wire/supplies-disagree'],
  scope: 'craft',
  check(view, report) {
    for (const [device, one, other] of [
      ['receiver', 'receiver.supply', 'wire.receiver.supply'],
      ['transmitter', 'video.supply', 'wire.transmitter.supply'],
    ] as const) {
      if (!view.isSet(one) || !view.isSet(other)) continue;
      const [first, second] = [view.value(one), view.quantity(other)];
      if (first?.kind !== 'quantity' || second === null || isSameVoltage(first.value, second)) continue;
      const values = { device, one: view.shown(one), other: view.shown(other) };
      const related = [{ at: one, message: 'Here it is {given}.', values: { given: view.shown(one) } }];
      report({ id: 'wire/supplies-disagree', at: other, values, related });
    }
  },
};

/** A device can only be fed with what the board or the pack has. */
const noSuchRail: CodeRule = {
  ids: ['wire/no-such-rail'],
  scope: 'craft',
  check(view, report) {
    const voltages = view.hardware.rails?.map(({ voltage }) => voltage);
    // A rail whose voltage nobody told may be just the one.
    if (voltages === undefined || voltages.includes(undefined)) return;
    const rails = voltages.flatMap((voltage) => (voltage == null ? [] : [inBase(voltage)]));
    for (const device of suppliedDevices()) {
      const at = supplyPathOf(view, device);
      const given = at === null ? null : view.quantity(at);
      if (at === null || given === null || rails.some((rail) => isSameVoltage(rail, given))) continue;
      const list = rails.map((rail) => view.short(rail, 'V')).join(', ');
      const values = { device, given: view.shown(at), board: view.boardTitle, rails: list };
      report({ id: 'wire/no-such-rail', at, values, fixes: nearestRail(view, at, given, rails) });
    }
  },
};

function nearestRail(
  view: CraftView,
  set: string,
  given: number,
  rails: readonly number[],
): readonly RuleFix[] {
  const [best] = [...rails].sort((one, other) => Math.abs(one - given) - Math.abs(other - given));
  if (best === undefined) return [];
  const to = view.exact(best, 'V');
  return [{ title: 'Feed it {to}', set, to, look: 'that the device bears it' }];
}

/** Whatever feeds a device, its voltage must lie within what the device's maker prints. */
const outsideAccepted: CodeRule = {
  ids: ['wire/outside-accepted'],
  scope: 'pack',
  check(view, report) {
    for (const device of view.members('wire')) {
      const accepts = view.range(`wire.${device}.accepts`);
      const fed = feedOf(view, device);
      if (accepts === null || fed === null) continue;
      if (fed.low >= 0.999 * accepts.low && fed.high <= 1.001 * accepts.high) continue;
      const values = {
        device: device.replaceAll('-', ' '),
        given: fedText(view, fed),
        least: view.amount(accepts.low, 'V'),
        most: view.amount(accepts.high, 'V'),
      };
      report({ id: 'wire/outside-accepted', at: fed.at, values });
    }
  },
};

interface Feed {
  readonly at: string;
  readonly low: number;
  readonly high: number;
}

function fedText(view: CraftView, fed: Feed): string {
  const [low, high] = [view.short(fed.low, 'V'), view.short(fed.high, 'V')];
  return low === high ? low : `${low} to ${high}`;
}

/** The lowest and highest voltage that a device sees: a rail's, or the pack's from landing to full. */
function feedOf(view: CraftView, device: string): Feed | null {
  const at = supplyPathOf(view, device);
  if (at === null) return null;
  const value = view.value(at);
  if (value?.kind === 'quantity') return { at, low: value.value, high: value.value };
  const full = figureOf(view, 'pack-full-voltage')?.likely;
  if (value?.kind !== 'word' || full === undefined) return null;
  return { at, low: figureOf(view, 'pack-land-voltage')?.likely ?? full, high: full };
}

export const deviceSupplyRules: readonly CodeRule[] = [
  receiverSupply,
  positionSupply,
  suppliesDisagree,
  noSuchRail,
  outsideAccepted,
];
