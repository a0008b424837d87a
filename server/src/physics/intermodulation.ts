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
