import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { coaxialFactors, coaxialThrust } from '../physics/mixing';
import type { Propeller } from '../physics/propeller';
import { estimatePropeller } from '../physics/propeller-estimate';
import { isCoaxial } from './layouts';

/** Share by which a coefficient that the maker or the pilot gives may be off. Common practice. */
const givenSpread = 0.08;

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

/** A propeller with what is not known of it. */
export interface PropellerInUse extends Propeller {
  /** m */
  readonly pitch: number;
  /** Shares by which its coefficients may be off. */
  readonly spread: { readonly thrust: number; readonly power: number };
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
  const measured = view.catalog.propellers.map((one) => ({
    ...one,
    diameter: inBase(one.diameter),
    pitch: inBase(one.pitch),
  }));
  const estimated = estimatePropeller(measured, { diameter, pitch, blades });
  const thrust = view.quantity('prop.thrust-coefficient');
  const power = view.quantity('prop.power-coefficient');
  if (thrust === null) assumed.push('thrust coefficient of like propellers in an open data set');
  if (power === null) assumed.push('power coefficient of like propellers in an open data set');
  if ((thrust === null || power === null) && (blades < 2 || blades > 4))
    assumed.push(`what ${blades} ${blades === 1 ? 'blade does' : 'blades do'}, carried on from two to four`);
  const around = guards.get(view.word('prop.guard') ?? 'none') ?? bare;
  if (thrust === null && around.words !== '') assumed.push(around.words);
  return {
    diameter,
    pitch,
    thrustCoefficient: thrust ?? around.thrust * estimated.thrust.likely,
    powerCoefficient: power ?? estimated.power.likely,
    spread: {
      thrust: thrust === null ? Math.hypot(estimated.thrust.spread, around.doubt) : givenSpread,
      power: power === null ? estimated.power.spread : givenSpread,
    },
  };
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
    spread: { ...propeller.spread, thrust: Math.hypot(propeller.spread.thrust, doubt) },
  };
}
