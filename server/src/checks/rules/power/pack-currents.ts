import { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { packPath, packQuantity } from '../../../figures/pack-in-view';
import { ratedCurrent } from '../../../physics/cells';
import type { CodeRule } from '../../rule';
import { perFlight } from '../remember/flights';

/** At full throttle a craft draws several times its hover current; this much leaves little. Common practice. */
const mostOfRatingInHover = 0.5;

/** Energy a kilogram that packs have, in Wh; outside, one of the figures is a slip. Common practice. */
const plausible = { low: 50, high: 290 };

const burst: CodeRule = {
  ids: ['power/burst-exceeded'],
  scope: 'pack',
  check(view, report) {
    const at = 'wire.battery-lead.peak-current';
    const peak = view.quantity(at);
    const rating = packQuantity(view, 'burst');
    const charge = packQuantity(view, 'capacity');
    const path = packPath(view, 'burst');
    if (peak === null || rating === null || charge === null || path === null) return;
    const limit = ratedCurrent(rating, charge);
    if (peak <= limit) return;
    const values = { peak: view.shown(at), limit: view.amount(limit, 'A'), rating: view.shown(path) };
    report({
      id: 'power/burst-exceeded',
      at,
      values,
      related: [{ at: path, message: 'The rating of the pack.' }],
    });
  },
};

/** What a flight really drew in the hover, against the rating of the pack that it was flown on. */
const hover = perFlight('power/hover-near-rating', (view, { name }) => {
  const at = `flight.${name}.hover-current`;
  const current = view.quantity(at);
  const pack = view.word(`flight.${name}.pack`);
  if (current === null || pack === null) return null;
  const limit = figureOf(new CraftView(view.craft, pack), 'pack-current-limit')?.likely;
  if (limit === undefined || current <= mostOfRatingInHover * limit) return null;
  const values = {
    current: view.shown(at),
    pack,
    limit: view.amount(limit, 'A'),
    share: view.amount(current / limit, '%'),
  };
  return { at, values, related: [{ at: `pack.${pack}.discharge`, message: `The rating of ${pack}.` }] };
});

const packMass: CodeRule = {
  ids: ['power/pack-mass-implausible'],
  scope: 'pack',
  check(view, report) {
    const energy = figureOf(view, 'pack-energy')?.likely;
    const mass = packQuantity(view, 'mass');
    const at = packPath(view, 'mass');
    if (energy === undefined || mass === null || at === null) return;
    const density = energy / mass;
    if (density >= plausible.low && density <= plausible.high) return;
    const values = {
      mass: view.shown(at),
      energy: view.amount(energy * 3600, 'Wh'),
      density: String(Math.round(density)),
      low: String(plausible.low),
      high: String(plausible.high),
    };
    report({ id: 'power/pack-mass-implausible', at, values });
  },
};

const noPack: CodeRule = {
  ids: ['power/no-pack'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    if (view.craft.packs().length === 0) report({ id: 'power/no-pack', at: 'craft.name' });
  },
};

export const packCurrentRules: readonly CodeRule[] = [burst, hover, packMass, noPack];
