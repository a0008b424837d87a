/** One input of a model that is known only so far. */
export interface Doubt<T> {
  /** What it is, in words: `the propellers’ thrust`. Models of one craft with other packs share it by these. */
  readonly of: string;
  /** Whether each pack has its own. */
  readonly isOfPack?: boolean;
  /**
   * The model with it elsewhere: `way` is 0 where it is likely, its median, -1 at the low and 1 at the high end of the
   * span that holds it nine times of ten, and beyond these as far again.
   */
  readonly at: (model: T, way: number) => T;
}

/** An input that is inProportion, of which the logarithm is spread evenly: so far down and up as factors. */
export function doubtOf<T>(
  of: string,
  { low, high }: { readonly low: number; readonly high: number },
  scaled: (model: T, by: number) => T,
): Doubt<T> {
  return { of, at: (model, way) => scaled(model, way < 0 ? low ** -way : high ** way) };
}

/** The factors by which an estimate reaches down and up. */
export function waysOf({ likely, low, high }: Estimate): { readonly low: number; readonly high: number } {
  return { low: low / likely, high: high / likely };
}

/** Down and up by the same factor. */
export function eitherWay(factor: number): { readonly low: number; readonly high: number } {
  return { low: 1 / factor, high: factor };
}

/** A model as it is likely, and as it looks with each of its doubts turned by itself, to the ends of their spans. */
export interface Doubtful<T> {
  readonly likely: T;
  readonly turned: readonly (readonly [low: T, high: T])[];
  /** With all of them turned, each its own way. */
  readonly together: (ways: readonly number[]) => T;
}

/** Where doubts lie and how they may be off, in ways: each direction by itself, as far as its span. */
export interface BelievedWays {
  readonly mean: readonly number[];
  readonly directions: readonly (readonly number[])[];
}

/** `believed`: what measuring has left of the doubts; left out: each is likely where it was thought, and by itself. */
export function doubtful<T>(
  prior: T,
  doubts: readonly Doubt<T>[],
  believed?: BelievedWays | null,
): Doubtful<T> {
  const at = (ways: readonly number[]) =>
    doubts.reduce((model, doubt, index) => {
      const way = ways[index] ?? 0;
      return way === 0 ? model : doubt.at(model, way);
    }, prior);
  if (believed == null)
    return {
      likely: prior,
      turned: doubts.map((doubt) => [doubt.at(prior, -1), doubt.at(prior, 1)]),
      together: at,
    };
  const { mean, directions } = believed;
  const from = (ways: readonly number[]) =>
    mean.map((value, index) =>
      directions.reduce((sum, one, way) => sum + (ways[way] ?? 0) * (one[index] ?? 0), value),
    );
  const alone = (which: number, way: number) =>
    at(from(directions.map((_, index) => (index === which ? way : 0))));
  return {
    likely: at(mean),
    turned: directions.map((_, index) => [alone(index, -1), alone(index, 1)]),
    together: (ways) => at(from(ways)),
  };
}

/** The same model with doubts of its own beside those that it has. */
export function withDoubts<T>(
  { likely, turned, together }: Doubtful<T>,
  doubts: readonly Doubt<T>[],
): Doubtful<T> {
  return {
    likely,
    turned: [...turned, ...doubts.map(({ at }): [T, T] => [at(likely, -1), at(likely, 1)])],
    together: (ways) =>
      doubts.reduce((model, { at }, index) => {
        const way = ways[turned.length + index] ?? 0;
        return way === 0 ? model : at(model, way);
      }, together(ways)),
  };
}

/** The same change made to a model and to what its doubts make of it. */
export function changedIn<T, U>(
  { likely, turned, together }: Doubtful<T>,
  change: (model: T) => U,
): Doubtful<U> {
  return {
    likely: change(likely),
    turned: turned.map(([low, high]) => [change(low), change(high)]),
    together: (ways) => change(together(ways)),
  };
}

export interface Estimate {
  readonly likely: number;
  /** The span holds it nine times of ten. */
  readonly low: number;
  readonly high: number;
  /** What stands for an end beyond which there is none: a craft that may not hover at all. */
  readonly lowWords?: string;
  readonly highWords?: string;
}

/** Down and up by a factor from what is likely. */
export function withinFactor(likely: number, factor: number): Estimate {
  return { likely, low: likely / factor, high: likely * factor };
}

/** An estimate of something that goes with another. */
export function inProportion({ likely, low, high }: Estimate, by: number): Estimate {
  return { likely: by * likely, low: by * low, high: by * high };
}

const noAnswer = 'not at all';

/**
 * A measure of a model with what its doubts make of it, above 0; null where the measure is. Its logarithm moves with
 * each doubt by itself, and these moves are added as independent ones are, by their squares. Where it has no answer at
 * an end, with all doubts turned towards it as far as is as likely, the end is told in words; `isAnswered` says
 * whether it has one, where that is known with less work.
 * Sources: JCGM 100, Guide to the expression of uncertainty in measurement, section 5.1 (by finite differences); for
 * the ends the first-order reliability method, any textbook on structural reliability.
 */
export function estimate<T>(
  model: Doubtful<T>,
  measure: (model: T) => number | null,
  isAnswered = (one: T) => measure(one) !== null,
): Estimate | null {
  const likely = measure(model.likely);
  if (likely === null || !Number.isFinite(likely)) return null;
  const moves = model.turned.map(
    ([low, high]): Moves => [moveOf(likely, measure(low)), moveOf(likely, measure(high))],
  );
  const below = endOf(model, isAnswered, moves, -1);
  const above = endOf(model, isAnswered, moves, 1);
  return {
    likely,
    low: likely * Math.exp(-below.size),
    high: likely * Math.exp(above.size),
    ...(below.isAnswered ? {} : { lowWords: noAnswer }),
    ...(above.isAnswered ? {} : { highWords: noAnswer }),
  };
}

/** By how much the logarithm moves with a doubt turned down and up; null: no answer. */
type Moves = readonly [low: number | null, high: number | null];

function moveOf(likely: number, measured: number | null): number | null {
  if (measured === null) return null;
  return likely > 0 && measured > 0 ? Math.log(measured / likely) : 0;
}

/** How far the doubts together take a measure to one side (-1 or 1), and whether it has an answer there. */
function endOf<T>(
  { together }: Doubtful<T>,
  isAnswered: (model: T) => boolean,
  moves: readonly Moves[],
  side: -1 | 1,
): { readonly size: number; readonly isAnswered: boolean } {
  let squares = 0;
  const most = moves.map(([low, high]) => {
    // Where one way has no answer, it leads as far as the other does, to the other side.
    const down = side * (low ?? -(high ?? 0));
    const up = side * (high ?? -(low ?? 0));
    const size = Math.max(0, down, up);
    squares += size * size;
    return down > up ? -size : size;
  });
  const size = Math.sqrt(squares);
  if (size === 0) return { size, isAnswered: true };
  return { size, isAnswered: isAnswered(together(most.map((way) => way / size))) };
}

/**
 * About a measure of any sign that is known, by the measures of the model with each doubt turned: the deviations are
 * added as independent ones are, by their squares.
 */
export function estimateAbout<T>(
  likely: number,
  turned: Doubtful<T>['turned'],
  measure: (model: T) => number,
): Omit<Estimate, 'lowWords' | 'highWords'> {
  let [below, above] = [0, 0];
  for (const [low, high] of turned) {
    const down = measure(low) - likely;
    const up = measure(high) - likely;
    below += Math.min(0, down, up) ** 2;
    above += Math.max(0, down, up) ** 2;
  }
  return { likely, low: likely - Math.sqrt(below), high: likely + Math.sqrt(above) };
}
