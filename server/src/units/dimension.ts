/** Exponents of the base dimensions. Voltage, charge and the rest are products of these. */
const bases = ['time', 'length', 'mass', 'angle', 'current', 'temperature', 'count', 'decibel'] as const;
type Base = (typeof bases)[number];
type Exponents = Readonly<Partial<Record<Base, number>>>;

/** A physical dimension. Two dimensions are the same exactly when their keys are. */
export interface Dimension {
  readonly key: string;
  readonly exponents: readonly number[];
}

function fromList(exponents: readonly number[]): Dimension {
  return { key: exponents.join(' '), exponents };
}

/** Makes a dimension from base exponents: `{ length: 1, time: -1 }` is a speed. */
export function dimension(exponents: Exponents): Dimension {
  return fromList(bases.map((base) => exponents[base] ?? 0));
}

/** A plain number: nothing in any base. */
export const plain = dimension({});

export function sameDimension(one: Dimension, other: Dimension): boolean {
  return one.key === other.key;
}

export function isPlain(given: Dimension): boolean {
  return given.key === plain.key;
}

export function multiplied(one: Dimension, other: Dimension): Dimension {
  return fromList(one.exponents.map((exponent, index) => exponent + (other.exponents[index] ?? 0)));
}

/** Raises a dimension to a power; a power of 0.5 is the dimension of a square root. */
export function raised(one: Dimension, power: number): Dimension {
  return fromList(one.exponents.map((exponent) => exponent * power || 0));
}

export function divided(one: Dimension, other: Dimension): Dimension {
  return multiplied(one, raised(other, -1));
}

/** Describes a dimension that has no name in the table, from its bases: "time^-2 length". */
export function spelledOut(given: Dimension): string {
  const parts = bases.flatMap((base, index) => {
    const exponent = given.exponents[index] ?? 0;
    if (exponent === 0) return [];
    return exponent === 1 ? [base] : [`${base}^${exponent}`];
  });
  return parts.length === 0 ? 'a plain number' : `a quantity in ${parts.join(' · ')}`;
}
