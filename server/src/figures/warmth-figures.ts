import type { CraftView } from '../craft/view';
import { fromBase, unitOf } from '../units/unit';
import { beyondModel } from './beyond-model';
import { full } from './drive-states';
import type { Computed, FigureSource } from './figure';
import { heldOf, isHeldTold } from './full-throttle-figures';
import { type BellReading, bellReadings } from './hot-motors';
import { type AsFlown, afterFullThrottle, type FlownMotors, flownBy, lossesOf } from './motor-heat';
import { estimate } from './uncertain';
import { fine } from './why';

/** A temperature of the motors as they are flown, which only a reading lets one tell. */
interface Temperature {
  readonly id: string;
  readonly title: string;
  readonly from: readonly string[];
  /** K */
  readonly warmth: (at: FlownWarmth) => number | null;
  readonly why: (at: FlownWarmth) => string;
}

interface FlownWarmth {
  readonly model: FlownMotors;
  readonly flown: AsFlown;
  readonly view: CraftView;
}

const temperatures: readonly Temperature[] = [
  {
    id: 'bell-as-flown',
    title: 'Bell of the warmest motor, as it is flown',
    from: [],
    warmth: ({ flown }) => flown.housing,
    why: ({ model: { air }, flown, view }) =>
      `${fine(air, 'degC')} + ${fine(flown.housing - air, 'K')}, for ${readingsText(view)}`,
  },
  {
    id: 'winding-as-flown',
    title: 'Winding of the warmest motor, as it is flown',
    from: [],
    warmth: ({ flown }) => flown.winding,
    why: ({ flown: { winding, housing, bodies } }) => {
      const watts = (winding - housing) / bodies.within;
      return `${fine(housing, 'degC')} + ${fine(watts, 'W')} × ${fine(bodies.within, 'K/W')}, the bell and what the winding gives to it`;
    },
  },
  {
    id: 'winding-after-full-throttle',
    title: 'Winding of the warmest motor, after full throttle',
    from: ['craft.longest-full-throttle', 'craft.flying'],
    warmth: ({ model, view }) => {
      const told = heldOf(view);
      return told === null ? null : (afterFullThrottle(model, told.held.likely)?.winding ?? null);
    },
    why: ({ model, flown, view }) => {
      const seconds = heldOf(view)?.held.likely ?? 0;
      const [state, after] = [full(model.onFull), afterFullThrottle(model, seconds)];
      if (state === null || after === null) return '';
      const watts = lossesOf(model.onFull, state, flown.winding).copper;
      return `${fine(flown.winding, 'degC')} + ${fine(after.winding - flown.winding, 'K')}, from ${fine(seconds, 's')} of ${fine(watts, 'W')} and more as it warms`;
    },
  },
];

export const warmthFigures: readonly FigureSource[] = temperatures.map(
  ({ id, title, from, warmth, why }) => ({
    id,
    title,
    unit: 'degC',
    from: ['flight.<name>.motor-temperature', 'craft.air-temperature', ...from],
    isSigned: true,
    // Without a reading none is asked for: `heat-words.ts` says what would make them known.
    concerns: (view: CraftView) => bellReadings(view).length > 0 && (from.length === 0 || isHeldTold(view)),
    whyNot: beyondModel,
    compute(view: CraftView): Computed | null {
      const known = flownBy(view);
      if (known === null) return null;
      const told = (model: FlownMotors): FlownWarmth | null =>
        model.flown === null ? null : { model, flown: model.flown, view };
      // What flying adds to the air is uncertain, not the air.
      const found = estimate(known.value, (model) => {
        const at = told(model);
        const kelvin = at === null ? null : warmth(at);
        return kelvin === null ? null : kelvin - model.air;
      });
      const likely = told(known.value.likely);
      if (found === null || likely === null) return null;
      const warm = (above: number) => fromBase(likely.model.air + above, unitOf('degC'));
      return {
        ...found,
        likely: warm(found.likely),
        low: warm(found.low),
        high: warm(found.high),
        why: why(likely),
        assumed: [...known.assumed, ...assumedOf(view, bellReadings(view))],
      };
    },
  }),
);

function readingsText(view: CraftView): string {
  return bellReadings(view)
    .map(
      ({ flight, bell, air }) =>
        `${view.short(bell, 'degC')} in air of ${view.short(air, 'degC')} on flight ${flight}`,
    )
    .join(', ');
}

function assumedOf(view: CraftView, readings: readonly BellReading[]): readonly string[] {
  const isTimed = readings.every(({ seconds }) => Number.isFinite(seconds));
  return [
    ...(isTimed ? [] : ['flights long enough for the motors to settle']),
    ...(readings.some(({ flight }) => !view.isSet(`flight.${flight}.air-temperature`))
      ? [
          `air of ${view.short(view.quantity('craft.air-temperature') ?? 0, 'degC')} on flights that note none`,
        ]
      : []),
  ];
}
