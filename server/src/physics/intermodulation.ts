/** A third-order product: where it falls, and the carriers that make it (`2 × a − b`, or `a + b − c`). */
export interface Product {
  readonly frequency: number;
  /** Indices into the list of carriers: added twice when the first two are the same; the last is taken off. */
  readonly added: readonly [number, number];
  readonly takenOff: number;
}

/**
 * All third-order products of carriers that lie close to them: 2 f1 − f2 for every ordered pair, and
 * f1 + f2 − f3 for every three. Frequencies in any one unit. Grows with the cube of the number of carriers.
 * Source: ITU-R SM.1134, two-signal and three-signal types (from memory).
 */
export function thirdOrderProducts(carriers: readonly number[]): readonly Product[] {
  const products: Product[] = [];
  for (const [one, first] of carriers.entries()) {
    for (const [other, second] of carriers.entries()) {
      if (other < one) continue;
      for (const [off, third] of carriers.entries()) {
        if (off === one || off === other) continue;
        products.push({ frequency: first + second - third, added: [one, other], takenOff: off });
      }
    }
  }
  return products;
}

/**
 * How many products of third order fall within a width (on either side) of a carrier that takes no part in them, and
 * how far the nearest of all such products is from such a carrier; infinite where there is none.
 */
export function productsInUse(
  carriers: readonly number[],
  halfWidth: number,
): { readonly count: number; readonly nearest: number } {
  let [count, nearest] = [0, Number.POSITIVE_INFINITY];
  for (const { frequency, added, takenOff } of thirdOrderProducts(carriers))
    for (const [index, carrier] of carriers.entries()) {
      if (index === takenOff || added.includes(index)) continue;
      const apart = Math.abs(frequency - carrier);
      nearest = Math.min(nearest, apart);
      if (apart < halfWidth) count += 1;
    }
  return { count, nearest };
}
