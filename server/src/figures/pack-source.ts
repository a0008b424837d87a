import { inBase } from '../catalog/known-parameter';
import type { PackFile, PackKind } from '../catalog/model/packs';
import type { CraftView } from '../craft/view';
import { chargeAtRest, type RestPoint } from '../physics/cells';
import { coldCharge, coldResistance } from '../physics/cold-cell';
import { shortText } from '../units/quantity';
import { leadResistance } from './leads';
import {
  chemistryInView,
  fullCell,
  nominalCell,
  packCount,
  packPath,
  packQuantity,
  packQuantityIfSet,
  restPointsOf,
} from './pack-in-view';
import { type Estimate, waysOf } from './uncertain';

/** Something as it is likely, and the factors that hold it nine times of ten. */
export interface Spread {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
}

/** What the pack in view is to what hangs on it. */
export interface PackSource {
  /** Half used and without a load, V. */
  readonly voltage: number;
  /** In series. */
  readonly cells: number;
  /** What one of them shows at rest, by its charge: rising. */
  readonly atRest: readonly RestPoint[];
  /** Share of its charge that it holds fresh from the charger. */
  readonly full: number;
  /** Of the pack alone, ohm, not cold and within the first second of a load. */
  readonly resistance: Spread;
  /** How many times that it has after some ten seconds. */
  readonly inFlight: Spread;
  /** Of leads and plugs, there and back, ohm. */
  readonly leads: Spread;
  /** C, not cold. */
  readonly charge: Spread;
  /** What the cold makes of resistance and charge; null for a pack that is warm enough. */
  readonly cold: { readonly resistance: Spread; readonly charge: Spread } | null;
}

/** A pack as warm as the air lets it be, or as cold as one may take off. */
export type PackWarmth = 'as it is' | 'cold';

/** `assumed`: gets what was assumed for it, in words. */
export function packSource(
  view: CraftView,
  assumed: string[],
  warmth: PackWarmth = 'as it is',
): PackSource | null {
  const { packs } = view.catalog;
  const cells = packCount(view, 'cells');
  const nominal = nominalCell(view);
  const charge = packQuantity(view, 'capacity');
  const temperature = packTemperature(view, warmth);
  if (cells === null || nominal === null || charge === null || charge <= 0 || temperature === null)
    return null;
  const resistance = packs === null ? null : packResistance(view, packs, assumed);
  if (packs === null || resistance === null) return null;
  return {
    voltage: cells * nominal,
    cells,
    ...alongCharge(view, nominal, assumed),
    resistance,
    inFlight: asFactors(packs.inFlight),
    leads: leadsOf(view, charge, assumed),
    charge: { likely: charge, ...packs.charge },
    cold: inCold(packs, temperature, assumed),
  };
}

/** By the table of its chemistry, and how much of it there is on a charger that stops at the full cell of the script. */
function alongCharge(
  view: CraftView,
  nominal: number,
  assumed: string[],
): Pick<PackSource, 'atRest' | 'full'> {
  const chemistry = chemistryInView(view);
  const points = chemistry === undefined ? null : restPointsOf(chemistry);
  if (points === null) {
    assumed.push(`a cell that keeps its ${view.short(nominal, 'V')} until it is empty`);
    return {
      atRest: [
        { charge: 0, voltage: nominal },
        { charge: 1, voltage: nominal },
      ],
      full: 1,
    };
  }
  return { atRest: points, full: chargeAtRest(points, fullCell(view) ?? Number.POSITIVE_INFINITY) };
}

interface PackTemperature {
  /** K */
  readonly temperature: number;
  /** `a pack as cold as the air` */
  readonly words: string;
}

/**
 * As it is, a pack is as cold as the air unless it is kept warm; a cold one as cold as may take off, or where nobody
 * says how cold that is, as the catalogue has it.
 */
function packTemperature(view: CraftView, warmth: PackWarmth): PackTemperature | null {
  const air = view.quantity('craft.air-temperature');
  const coldest = packQuantityIfSet(view, 'coldest');
  const { packs } = view.catalog;
  if (air === null || packs === null) return null;
  const of = (temperature: number) => `a pack of ${shortText(temperature, 'degC')}`;
  if (warmth === 'as it is') {
    const isKeptWarm = coldest !== null && coldest > air;
    return isKeptWarm
      ? { temperature: coldest, words: of(coldest) }
      : { temperature: air, words: 'a pack as cold as the air' };
  }
  if (coldest !== null) return { temperature: coldest, words: of(coldest) };
  const temperature = Math.min(air, inBase(packs.cold.usual));
  return { temperature, words: `${of(temperature)} (pack.<name>.coldest would tell)` };
}

/** In ohm, by what the script says of it. */
function packResistance(view: CraftView, { charger }: PackFile, assumed: string[]): Spread | null {
  const given = packQuantityIfSet(view, 'resistance');
  if (given !== null && given > 0) return { likely: given, low: 1 / charger, high: charger };
  const usual = usualPackResistance(view);
  if (usual === null) return null;
  const { likely, low, high } = usual;
  assumed.push(
    kindOfPack(view) === 'either'
      ? `a pack resistance of ${view.short(low * likely, 'mohm')} to ${view.short(high * likely, 'mohm')}, for quick and lasting packs alike: pack.${view.pack}.discharge would tell which`
      : `a pack resistance of ${view.short(likely, 'mohm')}, as usual for its kind`,
  );
  return usual;
}

/** What a fresh pack of the kind in view has from plug to plug, in ohm; null where its cells or charge are not known. */
export function usualPackResistance(view: CraftView): Spread | null {
  const { packs } = view.catalog;
  const cells = packCount(view, 'cells');
  const charge = packQuantity(view, 'capacity');
  if (packs === null || cells === null || charge === null || charge <= 0) return null;
  const { resistance, low, high } = packs.kinds[kindOfPack(view)];
  return { likely: (cells * inBase(resistance)) / (charge / 3600), low, high };
}

/** Settings any of which would tell whether a pack is a quick or a lasting one; none where that is known. */
export function tellsPackKind(view: CraftView): readonly string[] {
  if (packQuantityIfSet(view, 'resistance') !== null || kindOfPack(view) !== 'either') return [];
  return ['discharge', 'resistance'].flatMap((property) => packPath(view, property) ?? []);
}

function kindOfPack(view: CraftView): PackKind {
  if (chemistryInView(view)?.name === 'li-ion') return 'lasting';
  const rating = packQuantityIfSet(view, 'discharge');
  const { packs } = view.catalog;
  if (rating === null || packs === null) return 'either';
  return rating >= inBase(packs.quickRating) ? 'quick' : 'lasting';
}

/** Cells give less in the cold, and through more resistance. */
function inCold(
  { cold }: PackFile,
  { temperature, words }: PackTemperature,
  assumed: string[],
): PackSource['cold'] {
  const asKnown = inBase(cold.asKnown);
  if (temperature >= asKnown) return null;
  const rows = cold.charge.map((row) => ({ ...row, temperature: inBase(row.temperature) }));
  const left = coldCharge(rows, temperature);
  const { activation } = cold;
  const rising = (kilojoules: number) => coldResistance(temperature, asKnown, 1000 * kilojoules);
  const rise = {
    low: rising(activation.low),
    likely: rising(activation.likely),
    high: rising(activation.high),
  };
  const [percent, times] = [Math.round(100 * left.likely), shortText(rise.likely, '', 2)];
  assumed.push(`${words}, with ${percent} % of its charge and ${times} times its resistance`);
  return { resistance: asFactors(rise), charge: asFactors(left) };
}

function asFactors(estimate: Estimate): Spread {
  return { likely: estimate.likely, ...waysOf(estimate) };
}

/** Ohm of leads and plugs of a pack of 1 Ah, and the power by which they fall with its charge. Common practice. */
const usualLeads = { resistance: 6e-3, power: 0.7, factor: 2 };
/** Of a pair of plugs, ohm. Common practice. */
const plugs = 1e-3;

/** By the gauge and length that the script tells; else as usual for a pack of a charge (C). */
function leadsOf(view: CraftView, charge: number, assumed: string[]): Spread {
  const isTold = view.isSet('wire.battery-lead.gauge');
  const copper = isTold ? leadResistance(view, 'battery-lead') : null;
  const length = view.quantityOr('wire.battery-lead.length', null);
  if (copper !== null && length !== null)
    return { likely: 2 * length * copper + plugs, low: 1 / 1.4, high: 1.4 };
  const likely = usualLeads.resistance / (charge / 3600) ** usualLeads.power;
  assumed.push(`${view.short(likely, 'mohm')} of leads and plugs`);
  return { likely, low: 1 / usualLeads.factor, high: usualLeads.factor };
}

/**
 * Watts that board, receiver, camera and transmitter of a craft of 0.2 kg take, the power by which they grow with its
 * mass, and the factor that holds them. Common practice: 1.5 W of a craft of 30 g, 5 W of one of 0.6 kg.
 */
const usualOther = { power: 3.2, mass: 0.2, growth: 0.4, factor: 2 };
/** A current that somebody measured at rest. Common practice. */
const measuredOther = 1.15;

/** What everything but the motors takes, W, of a pack of a voltage (V) on a craft of a mass (kg). */
export function otherPowerOf(view: CraftView, voltage: number, mass: number, assumed: string[]): Spread {
  const standing = view.quantityOr('power.standing-current', null);
  if (standing !== null) return { likely: standing * voltage, low: 1 / measuredOther, high: measuredOther };
  const likely = usualOther.power * (mass / usualOther.mass) ** usualOther.growth;
  assumed.push(`${view.short(likely, 'W')} for everything but the motors`);
  return { likely, low: 1 / usualOther.factor, high: usualOther.factor };
}
