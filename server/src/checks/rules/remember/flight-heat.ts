import type { CraftView } from '../../../craft/view';
import { chainNames, isUnfiltered, unfilteredAt } from '../../../figures/filter-stages';
import { cameDownHot, weakMagnets } from '../../../figures/hot-motors';
import { cutSettingOf, noiseWords } from '../../../figures/noise-words';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule } from '../../rule';
import { filterOn } from '../tune/filter-fixes';
import { perFlight } from './flights';

/** Flights after which motors were too hot, against what the filters did with that pack. */
export const flightHeatRules: readonly CodeRule[] = [
  perFlight('remember/motors-too-hot', (view, flight) => {
    const at = `flight.${flight.name}.motor-temperature`;
    if (!cameDownHot(view, flight.name)) return null;
    const { words, through } = noiseWords(flight.view);
    const filters = through?.filters ?? [];
    return {
      at,
      values: { flight: flight.name, temperature: view.shown(at), limit: limitText(view), ...words },
      related: filters.map(({ stage, through: share }) => ({
        at: cutSettingOf(flight.view, stage),
        message: 'Lets {share} of the motors’ tone in the hover through.',
        values: { share: view.short(share, '%') },
      })),
    };
  }),
  perFlight('remember/warm-and-unfiltered', (view, flight) => {
    const at = `flight.${flight.name}.motor-temperature`;
    const temperature = view.quantity(at);
    if (temperature === null || temperature < tooHotToTouch) return null;
    const filters = filtersOff(flight.view);
    if (filters === null) return null;
    const values = { flight: flight.name, temperature: view.shown(at), filters: filters.what };
    const fixes = filterOn(flight.view, ...filters.chains);
    return { at, values, related: [{ at: filters.at, message: 'Off here.' }], fixes };
  }),
];

function limitText(view: CraftView): string {
  return view.isSet('motor.temperature-limit')
    ? `${view.shown('motor.temperature-limit')} is the most they should have`
    : `many magnets weaken from ${view.short(weakMagnets, 'degC')}`;
}

const tooHotToTouch = toBase(60, unitOf('degC'));

function filtersOff(view: CraftView) {
  const chains = chainNames.filter((chain) => isUnfiltered(view, chain));
  const [first, ...others] = chains;
  if (first === undefined) return null;
  const what = others.length > 0 ? 'every filter' : `every filter of the ${first}`;
  return { what, at: unfilteredAt(view, first), chains };
}
