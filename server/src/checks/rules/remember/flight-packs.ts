import { CraftView, viewQuery } from '../../../craft/view';
import { compareText } from '../../report/order';
import type { CodeRule } from '../../rule';
import { dateOf, Flight, flightDate, perFlight } from './flights';

/** Packs of single flights: how far they were emptied, and how many since a change. */
export const flightPackRules: readonly CodeRule[] = [
  {
    ids: ['remember/few-packs-since-change'],
    scope: 'craft',
    check(view, report) {
      const dated = sinceChange(view.members('flight').flatMap((name) => datedFlight(view, name)));
      const change = dated.findLast(({ isChange }) => isChange);
      if (change === undefined) return;
      const packs = dated.reduce((sum, flight) => sum + flight.packs, 0);
      if (packs >= trustworthy) return;
      report({
        id: 'remember/few-packs-since-change',
        at: `flight.${change.name}.changed`,
        values: { packs: String(packs), date: change.date, enough: String(trustworthy) },
      });
    },
  },
  perFlight('remember/pack-below-land', (view, flight) => {
    const at = `flight.${flight.name}.rest-cell`;
    const rest = view.quantity(at);
    if (rest === null) return null;
    const flown = flight.view;
    const land = flown.quantity('power.land-cell');
    if (land === null || rest >= land) return null;
    const values = {
      flight: flight.name,
      which: packText(flight.pack),
      rest: view.shown(at),
      land: flown.shown('power.land-cell'),
    };
    return { at, values, related: [{ at: 'power.land-cell', message: 'The landing voltage.' }] };
  }),
  perFlight('remember/pack-drained', (view, flight) => {
    const at = `flight.${flight.name}.used-charge`;
    const used = view.quantity(at);
    const pack = used === null ? null : flight.pack;
    const full = `pack.${pack}.capacity`;
    const capacity = pack === null ? null : view.quantity(full);
    if (used === null || capacity === null || capacity <= 0 || used <= mostUsed * capacity) return null;
    const values = {
      flight: flight.name,
      used: view.shown(at),
      which: packText(pack),
      capacity: view.shown(full),
      share: view.amount(used / capacity, '%'),
    };
    return { at, values, related: [{ at: full, message: "The pack's capacity." }] };
  }),
  perFlight('remember/pack-not-named', (view, { name }) => {
    const packs = view.craft.packs();
    const said = perPack.find((part) => view.isSet(`flight.${name}.${part}`));
    if (packs.length < 2 || said === undefined || view.isSet(`flight.${name}.pack`)) return null;
    const values = { flight: name, what: said.replaceAll('-', ' '), packs: String(packs.length) };
    return { at: `flight.${name}.${said}`, values };
  }),
  {
    ids: ['remember/hover-point-moved'],
    scope: 'craft',
    check(view, report) {
      const hovering = lastWithEachPack(view.members('flight').flatMap((name) => hover(view, name)));
      for (const flight of hovering) {
        const at = `flight.${flight.name}.hover-throttle`;
        const flown = view.quantity(at);
        const craft = new CraftView(view.craft, flight.pack);
        const set = craft.quantity('stick.throttle.hover-point');
        if (flown === null || set === null || Math.abs(flown - set) <= hoverSlack) continue;
        report({
          id: 'remember/hover-point-moved',
          at,
          values: {
            flight: flight.name,
            flown: view.shown(at),
            set: craft.shown('stick.throttle.hover-point'),
          },
          related: [{ at: 'stick.throttle.hover-point', message: 'The hover point.' }],
        });
      }
    },
  },
  perFlight('remember/flown-after-permission', (view, { name }) => {
    const until = dateOf(view, 'rules.permission-until');
    const date = until === null ? null : flightDate(view, name);
    if (until === null || date === null || date <= until) return null;
    const related = [{ at: 'rules.permission-until', message: 'It ended here.' }];
    return { at: `flight.${name}.date`, values: { flight: name, date, until }, related };
  }),
];

/** About a dozen packs make a tune trustworthy: common practice. */
const trustworthy = 12;
/** Share of a pack that is used at most: common practice. */
const mostUsed = 0.8;
/** Share of throttle by which the hover may differ from day to day. */
const hoverSlack = 0.08;
/** Figures that mean little without the pack. */
const perPack = [
  'motor-temperature',
  'esc-temperature',
  'used-charge',
  'rest-cell',
  'hover-throttle',
  'minutes',
];

function packText(pack: string | null): string {
  return pack === null ? 'the pack' : `pack ${pack}`;
}

interface DatedFlight {
  readonly name: string;
  readonly date: string;
  /** Whether something of the craft was changed before it. */
  readonly isChange: boolean;
  readonly packs: number;
}

const datedFlight = viewQuery('dated flight', (view, name: string): readonly DatedFlight[] => {
  const date = flightDate(view, name);
  if (date === null) return [];
  const isChange = view.isSet(`flight.${name}.changed`);
  return [{ name, date, isChange, packs: view.count(`flight.${name}.packs-flown`) ?? 1 }];
});

/** By date, those since the last change among them. */
function sinceChange(dated: readonly DatedFlight[]): readonly DatedFlight[] {
  const ordered = [...dated].sort((one, other) => compareText(one.date, other.date));
  const change = ordered.findLast(({ isChange }) => isChange);
  return change === undefined ? ordered : ordered.filter(({ date }) => date >= change.date);
}

interface HoveringFlight {
  readonly name: string;
  readonly pack: string | null;
  readonly date: string | null;
}

const hover = viewQuery('hovering flight', (view, name: string): readonly HoveringFlight[] =>
  view.isSet(`flight.${name}.hover-throttle`)
    ? [{ name, pack: new Flight(view, name).pack, date: flightDate(view, name) }]
    : [],
);

/** Undated flights count as the latest, in the order of the script. */
function lastWithEachPack(all: readonly HoveringFlight[]): readonly HoveringFlight[] {
  const ordered = [...all].sort((one, other) => compareText(one.date ?? '9999', other.date ?? '9999'));
  const last = new Map(ordered.map((flight) => [flight.pack, flight]));
  return [...last.values()];
}
