import type { CraftView } from '../../../craft/view';
import { usualHalfWidth } from '../../../figures/video';
import { type Product, thirdOrderProducts } from '../../../physics/intermodulation';

/** More than fly together anywhere; the products grow with the cube of it. */
export const mostPilots = 16;

export interface Pilot {
  readonly name: string;
  readonly frequency: number;
}

export function otherPilots(view: CraftView): readonly Pilot[] {
  return view.members('radio-club.other').flatMap((name) => {
    const frequency = view.quantity(`radio-club.other.${name}.frequency`);
    return frequency === null ? [] : [{ name, frequency }];
  });
}

export interface Hit {
  readonly product: Product;
  /** Index of the carrier that is hit; 0 is the craft's own. */
  readonly victim: number;
  readonly apart: number;
}

/** The product nearest to a carrier that took no part in it, if the own carrier has to do with either. */
export function worstHit(carriers: readonly number[]): Hit | null {
  let worst: Hit | null = null;
  for (const product of thirdOrderProducts(carriers)) {
    const makers = [...product.added, product.takenOff];
    for (const [victim, carrier] of carriers.entries()) {
      const apart = Math.abs(product.frequency - carrier);
      const isOurs = victim === 0 || makers.includes(0);
      if (makers.includes(victim) || !isOurs || apart >= usualHalfWidth) continue;
      if (worst === null || apart < worst.apart) worst = { product, victim, apart };
    }
  }
  return worst;
}

/** Whether the first of some carriers, in Hz, makes or suffers a product of third order. */
export function hasThirdOrder(carriers: readonly number[]): boolean {
  return worstHit(carriers.slice(0, mostPilots + 1)) !== null;
}
