/** A function that an expression may call. All its arguments have one dimension. */
interface ScriptFunction {
  readonly fewest: number;
  readonly most: number;
  /** What it takes, for a sentence. */
  readonly takes: string;
  /** What each of the fewest is called while it is not written yet. */
  readonly names: readonly string[];
  /** Whether it gives back one of its arguments as it is. */
  readonly choosesOne: boolean;
  readonly apply: (values: readonly number[]) => number;
}

export const functions: ReadonlyMap<string, ScriptFunction> = new Map([
  [
    'min',
    {
      fewest: 1,
      most: 20,
      takes: 'one or more values',
      names: ['value'],
      choosesOne: true,
      apply: (values) => Math.min(...values),
    },
  ],
  [
    'max',
    {
      fewest: 1,
      most: 20,
      takes: 'one or more values',
      names: ['value'],
      choosesOne: true,
      apply: (values) => Math.max(...values),
    },
  ],
  [
    'abs',
    {
      fewest: 1,
      most: 1,
      takes: 'one value',
      names: ['value'],
      choosesOne: false,
      apply: ([value = 0]) => Math.abs(value),
    },
  ],
  [
    'round',
    {
      fewest: 1,
      most: 2,
      takes: 'a plain number, or a quantity and the step to round it to',
      names: ['value'],
      choosesOne: false,
      apply: ([value = 0, step = 1]) => Math.round(value / step) * step,
    },
  ],
  [
    'sqrt',
    {
      fewest: 1,
      most: 1,
      takes: 'one value',
      names: ['value'],
      choosesOne: false,
      apply: ([value = 0]) => Math.sqrt(value),
    },
  ],
  [
    'clamp',
    {
      fewest: 3,
      most: 3,
      takes: 'a value, the least and the most that it may be',
      names: ['value', 'least', 'most'],
      choosesOne: true,
      apply: ([value = 0, least = 0, most = 0]) => Math.min(Math.max(value, least), most),
    },
  ],
]);
