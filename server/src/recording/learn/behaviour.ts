import type { SurveyedColumn } from '../read/survey';
import { median } from '../read/timeline';

/** What the numbers of a column do. */
export interface Behaviour {
  /** How many of the rows that were looked at hold a number. */
  readonly count: number;
  readonly share: number;
  readonly least: number;
  readonly most: number;
  readonly middle: number;
  /** A size that one in a thousand exceeds. */
  readonly large: number;
  readonly isWhole: boolean;
  /** Whether it never falls but where a clock starts anew, and rises in all. */
  readonly rises: boolean;
  /** From a row to the next, as it mostly is; on average where it mostly stands, as a coarse clock does. */
  readonly step: number;
}

export function behaviourOf({ values, next }: SurveyedColumn): Behaviour {
  const numbers = values.filter((value) => !Number.isNaN(value));
  const sorted = Float64Array.from(numbers).sort();
  const sizes = numbers.map(Math.abs).sort();
  const at = (list: Float64Array, share: number) =>
    list[Math.min(list.length - 1, Math.floor(share * list.length))] ?? Number.NaN;
  const steps: number[] = [];
  let [falls, pairs] = [0, 0];
  for (let row = 0; row < values.length; row += 1) {
    const step = (next[row] as number) - (values[row] as number);
    if (Number.isNaN(step)) continue;
    pairs += 1;
    if (step < 0) falls += 1;
    else if (step > 0) steps.push(step);
  }
  const most = sorted.at(-1) ?? Number.NaN;
  return {
    count: numbers.length,
    share: numbers.length / Math.max(1, values.length),
    least: sorted[0] ?? Number.NaN,
    most,
    middle: at(sorted, 0.5),
    large: at(sizes, 0.999),
    isWhole: numbers.every((value) => Number.isInteger(value)),
    rises: pairs > 0 && falls <= 0.02 * pairs && most > (sorted[0] as number) && hasRisen(numbers),
    step:
      steps.length > pairs / 2
        ? median(steps)
        : steps.reduce((sum, one) => sum + one, 0) / Math.max(1, pairs),
  };
}

/** From one of the rows that were looked at to the next it may fall where a clock runs over or starts anew. */
function hasRisen(numbers: Float64Array): boolean {
  let falls = 0;
  for (let at = 1; at < numbers.length; at += 1)
    if ((numbers[at] as number) < (numbers[at - 1] as number)) falls += 1;
  return falls <= Math.max(2, 0.02 * numbers.length);
}

/** What columns do that count alike, all together; of the clock's ways the first one's. */
export function jointBehaviour(columns: readonly [Behaviour, ...Behaviour[]]): Behaviour {
  return {
    ...columns[0],
    least: Math.min(...columns.map(({ least }) => least)),
    most: Math.max(...columns.map(({ most }) => most)),
    large: Math.max(...columns.map(({ large }) => large)),
    isWhole: columns.every(({ isWhole }) => isWhole),
  };
}
