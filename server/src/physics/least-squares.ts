/** A line, plane or more through points, in the sense of least squares. */
export interface LeastSquares {
  /** What each column counts. */
  readonly coefficients: readonly number[];
  /** What is left of each value. */
  readonly residuals: readonly number[];
  /** (XᵀX)⁻¹: how far a row lies from those that were fitted is x (XᵀX)⁻¹ xᵀ, its leverage. */
  readonly inverse: readonly (readonly number[])[];
}

/**
 * The coefficients b with the least Σ (value − row · b)²; null where the rows do not tell the columns apart.
 * Domain: at least as many rows as columns, all rows of one length. By the normal equations: for a few columns of
 * like size.
 * Source: N. R. Draper, H. Smith, Applied Regression Analysis, chapter 5 (any textbook on regression).
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): LeastSquares | null {
  const width = rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, index) => index);
  const normal = columns.map((one) =>
    columns.map((other) => sumOf(rows, (row) => (row[one] ?? 0) * (row[other] ?? 0))),
  );
  const inverse = inverted(normal);
  if (inverse === null) return null;
  const right = columns.map((one) => sumOf(rows, (row, index) => (row[one] ?? 0) * (values[index] ?? 0)));
  const coefficients = inverse.map((line) => dot(line, right));
  const residuals = rows.map((row, index) => (values[index] ?? 0) - dot(row, coefficients));
  return { coefficients, residuals, inverse };
}

/**
 * The least squares of many rows of which only sums were kept: the coefficients b of N b = r with N = XᵀX and r = Xᵀy,
 * and N⁻¹; null where the columns can't be told apart. Source: as above.
 */
export function leastSquaresOfSums(
  normal: readonly (readonly number[])[],
  right: readonly number[],
): Pick<LeastSquares, 'coefficients' | 'inverse'> | null {
  const inverse = inverted(normal);
  return inverse === null ? null : { coefficients: inverse.map((line) => dot(line, right)), inverse };
}

/** How far a row lies from those that were fitted. */
export function leverage(inverse: LeastSquares['inverse'], row: readonly number[]): number {
  return dot(
    row,
    inverse.map((line) => dot(line, row)),
  );
}

export function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, index) => sum + value * (other[index] ?? 0), 0);
}

function sumOf<T>(all: readonly T[], of: (one: T, index: number) => number): number {
  return all.reduce((sum, one, index) => sum + of(one, index), 0);
}

/** A pivot smaller than this share of its column's first size is taken for nothing. */
const nothing = 1e-12;

/** By Gauss and Jordan with the largest pivot of each column; null where there is none. */
function inverted(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const size = matrix.length;
  const work = matrix.map((row, at) => [...row, ...row.map((_, index) => (index === at ? 1 : 0))]);
  for (let column = 0; column < size; column += 1) {
    const rest = work.slice(column);
    const pivot = rest.reduce((best, row) => (sizeIn(row, column) > sizeIn(best, column) ? row : best));
    if (!(sizeIn(pivot, column) > nothing * sizeIn(matrix[column] ?? [], column))) return null;
    work.splice(work.indexOf(pivot), 1);
    work.splice(column, 0, pivot);
    const first = pivot[column] ?? 1;
    const scaled = pivot.map((value) => value / first);
    for (const [index, row] of work.entries()) {
      const times = row[column] ?? 0;
      work[index] = index === column ? scaled : row.map((value, at) => value - times * (scaled[at] ?? 0));
    }
  }
  return work.map((row) => row.slice(size));
}

function sizeIn(row: readonly number[], column: number): number {
  return Math.abs(row[column] ?? 0);
}
