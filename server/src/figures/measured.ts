import type { CraftView } from '../craft/view';
import { fromBase, unitOf } from '../units/unit';
import { beliefsOf, type Judged } from './beliefs';
import type { MeasuredInFlight } from './figure';
import type { ReadingKind } from './flight-readings';
import { packFlown } from './flights';

interface Words {
  readonly unit: string;
  /** What may be wrong where the reading lies above all that was estimated, and below. */
  readonly above: string;
  readonly below: string;
}

const kinds: Readonly<Record<ReadingKind, Words>> = {
  'hover-throttle': {
    unit: '%',
    above: 'the masses, the propellers, a tired or cold pack, and wind',
    below: 'the masses, kv and propellers of the script, and a throttle curve or limit that it does not tell',
  },
  'hover-current': {
    unit: 'A',
    above: 'power.current-scale, the masses, and what rubs or drags',
    below: 'power.current-scale and power.current-offset, and the masses',
  },
  'used-charge': {
    unit: 'mAh',
    above: 'the capacity in the script, and a cell voltage that was read too soon after landing',
    below: 'the age of the pack, and whether it was charged full',
  },
};

/** What was read off on one flight, or on all with the pack in view; of one kind, or of all. */
export function measuredOn(
  view: CraftView,
  { flight, kind }: { readonly flight?: string; readonly kind?: ReadingKind },
): readonly (MeasuredInFlight & { readonly kind: ReadingKind })[] {
  const judged = beliefsOf(view)?.value.judged ?? [];
  return judged
    .filter(({ reading }) => kind === undefined || reading.kind === kind)
    .filter(({ reading }) =>
      flight === undefined ? packFlown(view, reading.flight) === view.pack : reading.flight === flight,
    )
    .map((one) => ({ ...told(view, one), kind: one.reading.kind }));
}

function told(view: CraftView, one: Judged): MeasuredInFlight {
  const { reading, estimate, isTaken } = one;
  const { unit } = kinds[reading.kind];
  const inUnit = (value: number) => fromBase(value, unitOf(unit));
  return {
    flight: reading.flight,
    reading: inUnit(reading.likely),
    estimate: estimate === null ? null : inUnit(estimate.likely),
    isCorrected: isTaken,
    text: `you measured ${view.short(reading.likely, unit)}${dayOf(view, reading.flight)}, ${verdict(view, one, unit)}`,
  };
}

/** ` on 2026-06-12`; nothing where the flight says no date. */
function dayOf(view: CraftView, flight: string): string {
  const date = view.value(`flight.${flight}.date`);
  return date?.kind === 'date' ? ` on ${date.value}` : '';
}

function verdict(view: CraftView, { reading, estimate, isTaken }: Judged, unit: string): string {
  if (estimate === null) return 'and by the estimate it could not hover: nothing is corrected';
  const likely = view.short(estimate.likely, unit);
  if (isTaken) return `the estimate was ${likely}: corrected`;
  return `the estimate was ${likely} (${estimateSpan(view, estimate, unit)}): too far apart, so nothing is corrected. Look at ${suspectsOf({ reading, estimate })}`;
}

function estimateSpan(view: CraftView, { low, high }: NonNullable<Judged['estimate']>, unit: string): string {
  return `${view.short(low, unit)} to ${view.short(high, unit)}`;
}

/** What to look at where a reading is too far from its estimate. */
export function suspectsOf({ reading, estimate }: Pick<Judged, 'reading' | 'estimate'>): string {
  const { above, below } = kinds[reading.kind];
  return estimate !== null && reading.likely < estimate.likely ? below : above;
}
