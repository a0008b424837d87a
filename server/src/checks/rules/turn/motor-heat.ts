import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { bellReadings, cameDownHot, magnetLimit } from '../../../figures/hot-motors';
import { usualInsulation } from '../../../figures/motor-heat';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule, RuleFinding } from '../../rule';

/** What readings of the bell let one reckon of windings and magnets, against what these bear. */
export const motorHeatRules: readonly CodeRule[] = [
  {
    ids: ['turn/winding-too-hot', 'turn/magnets-too-hot'],
    scope: 'pack',
    check(view, report) {
      for (const one of [windingTooHot(view), magnetsTooHot(view)]) if (one !== null) report(one);
    },
  },
];

function windingTooHot(view: CraftView): RuleFinding | null {
  const limit = view.quantityOr('motor.insulation-limit', usualInsulation);
  const held = figureOf(view, 'full-throttle-held');
  const flown = warmthOf(view, 'winding-as-flown');
  const climbed = held === null ? null : warmthOf(view, 'winding-after-full-throttle');
  if (limit === null) return null;
  const isHotFlown = flown !== null && flown > limit;
  const temperature = isHotFlown ? flown : climbed;
  if (temperature === null || temperature <= limit) return null;
  const when =
    isHotFlown || held === null ? 'as it is flown' : `after ${view.short(held.likely, 's')} of full throttle`;
  return found(view, 'turn/winding-too-hot', { temperature, limit, words: { when } });
}

function magnetsTooHot(view: CraftView): RuleFinding | null {
  const limit = magnetLimit(view);
  const air = view.quantity('craft.air-temperature');
  const temperature = warmthOf(view, 'bell-as-flown');
  if (limit === null || air === null || temperature === null || temperature <= limit) return null;
  // That has its own finding.
  if (bellReadings(view).some(({ flight }) => cameDownHot(view, flight))) return null;
  return found(view, 'turn/magnets-too-hot', {
    temperature,
    limit,
    words: { air: view.short(air, 'degC') },
  });
}

/** K; null where it is not known. */
function warmthOf(view: CraftView, id: string): number | null {
  const figure = figureOf(view, id);
  return figure === null ? null : toBase(figure.likely, unitOf('degC'));
}

interface TooHot {
  /** K */
  readonly temperature: number;
  readonly limit: number;
  readonly words: Readonly<Record<string, string>>;
}

/** Told at the warmest reading. */
function found(view: CraftView, id: string, { temperature, limit, words }: TooHot): RuleFinding | null {
  const [warmest] = [...bellReadings(view)].sort((one, other) => other.bell - one.bell);
  if (warmest === undefined) return null;
  const { flight, bell } = warmest;
  return {
    id,
    at: `flight.${flight}.motor-temperature`,
    values: {
      flight,
      bell: view.short(bell, 'degC'),
      temperature: view.amount(temperature, 'degC'),
      limit: view.amount(limit, 'degC'),
      ...words,
    },
  };
}
