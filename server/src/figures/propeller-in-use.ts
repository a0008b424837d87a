import type { Catalog } from '../catalog/catalog';
import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { coaxialFactors, coaxialThrust } from '../physics/mixing';
import type { Propeller } from '../physics/propeller';
import { estimatePropeller, type PropellerLaw, propellerLaw } from '../physics/propeller-estimate';
import { isCoaxial } from './layouts';
import { propellerOnStand, type StandPropeller } from './propeller-on-stand';

/** Factor by which a coefficient that the maker or the pilot gives may be off. Common practice. */
const givenFactor = 1.08;

const bare = { thrust: 1, doubt: 0, words: '' };

/**
 * What surrounds a propeller makes of its thrust in the hover, as a ratio, and how far that may be off. A duct: Li,
 * Yonezawa and Liu, Drones 5(3) 101 (2021), computed, 7 % more as built and up to 25 % when shaped for it; a ring
 * keeps a gap to the tips, and no gain is claimed for it (J. Pereira, University of Maryland, 2008, secondary).
 */
const guards: ReadonlyMap<string, typeof bare> = new Map([
  [
    'ring',
    { thrust: 1, doubt: 0.05, words: 'no gain of thrust from the rings around the propellers, and no loss' },
  ],
  ['duct', { thrust: 1.07, doubt: 0.1, words: '7 % more thrust in the hover from the ducts' }],
]);

/** Factors by which the coefficients may be off, and how far both go together, from -1 to 1. */
export interface PropellerSpread {
  readonly thrust: number;
  readonly power: number;
  readonly correlation: number;
}

/** A propeller with what is not known of it. */
export interface PropellerInUse extends Propeller {
  /** m */
  readonly pitch: number;
  readonly spread: PropellerSpread;
}

/** As the craft has it: guarded, or in another's wash. `assumed`: gets what was assumed for it, in words. */
export function propellerInUse(view: CraftView, assumed: string[]): PropellerInUse | null {
  const propeller = propellerOf(view, assumed);
  return propeller === null ? null : inWash(view, propeller, assumed);
}

function propellerOf(view: CraftView, assumed: string[]): PropellerInUse | null {
  const diameter = view.quantity('prop.diameter');
  const pitch = view.quantity('prop.pitch');
  const blades = view.count('prop.blades');
  if (diameter === null || pitch === null || blades === null) return null;
  const thrust = view.quantityOr('prop.thrust-coefficient', null);
  const power = view.quantityOr('prop.power-coefficient', null);
  const estimated = diameter > 0 && pitch > 0 ? estimateOf(view, { diameter, pitch, blades }) : null;
  if (estimated === null) return null;
  const stand = thrust !== null && power !== null ? null : propellerOnStand(view, diameter, estimated);
  if (stand !== null) return withGiven(stand, { diameter, pitch, thrust, power }, assumed);
  if (thrust === null) assumed.push('thrust coefficient of like propellers in an open data set');
  if (power === null) assumed.push('power coefficient of like propellers in an open data set');
  if ((thrust === null || power === null) && (blades < 2 || blades > 4))
    assumed.push(`what ${blades} ${blades === 1 ? 'blade does' : 'blades do'}, carried on from two to four`);
  const around = guards.get(view.wordOr('prop.guard', 'none') ?? 'none') ?? bare;
  if (thrust === null && around.words !== '') assumed.push(around.words);
  return {
    diameter,
    pitch,
    thrustCoefficient: thrust ?? around.thrust * estimated.thrust.likely,
    powerCoefficient: power ?? estimated.power.likely,
    spread: {
      thrust: thrust === null ? bothDoubts(estimated.thrust.factor, 1 + around.doubt) : givenFactor,
      power: power === null ? estimated.power.factor : givenFactor,
      correlation: thrust === null && power === null ? estimated.correlation : 0,
    },
  };
}

/** By the maker's table, but for what is written: a stand has no guards, and the table's propeller is taken for ours. */
function withGiven(
  stand: StandPropeller,
  {
    thrust,
    power,
    ...size
  }: { diameter: number; pitch: number; thrust: number | null; power: number | null },
  assumed: string[],
): PropellerInUse {
  assumed.push(...stand.words);
  return {
    ...size,
    thrustCoefficient: thrust ?? stand.thrust.likely,
    powerCoefficient: power ?? stand.power.likely,
    spread: {
      thrust: thrust === null ? stand.thrust.factor : givenFactor,
      power: power === null ? stand.power.factor : givenFactor,
      correlation: thrust === null && power === null ? stand.correlation : 0,
    },
  };
}

function estimateOf({ catalog }: CraftView, asked: Parameters<typeof estimatePropeller>[1]) {
  const law = lawOf(catalog);
  return law === null ? null : estimatePropeller(law, asked);
}

/** Measured propellers stand in the catalogue and ask nothing of a craft: what they have in common is found once. */
const laws = new WeakMap<Catalog, PropellerLaw | null>();

function lawOf(catalog: Catalog): PropellerLaw | null {
  const known = laws.get(catalog);
  if (known !== undefined) return known;
  const law = propellerLaw(
    catalog.propellers.map((one) => ({
      ...one,
      diameter: inBase(one.diameter),
      pitch: inBase(one.pitch),
    })),
  );
  laws.set(catalog, law);
  return law;
}

/** Two factors by which something may be off, each for its own reason. */
function bothDoubts(one: number, other: number): number {
  return Math.exp(Math.hypot(Math.log(one), Math.log(other)));
}

/** Above each other, propellers lift less for the same power: a mean of the upper and the lower one. */
function inWash(view: CraftView, propeller: PropellerInUse, assumed: string[]): PropellerInUse {
  if (!isCoaxial(view.word('craft.layout') ?? '')) return propeller;
  const { low, likely, high } = coaxialFactors;
  const kept = coaxialThrust(likely);
  const doubt = (coaxialThrust(low) - coaxialThrust(high)) / (2 * kept);
  assumed.push(`${Math.round(100 * kept)} % of the thrust side by side, for propellers above each other`);
  return {
    ...propeller,
    thrustCoefficient: kept * propeller.thrustCoefficient,
    spread: { ...propeller.spread, thrust: bothDoubts(propeller.spread.thrust, 1 + doubt) },
  };
}
