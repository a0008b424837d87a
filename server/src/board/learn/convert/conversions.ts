import { partParameter } from '../../meaning/part-parameter';
import { namedNumber } from './named-number';
import { numberConversions } from './number-conversions';
import { type Conversion, type Ground, type NumberTaken, parameterTaken, type TakenAs } from './taken';
import { type WordTaken, wordConversion } from './word-conversions';

/**
 * How the values of settings become what they are taken for, all at once: what belongs together is counted alike.
 * Settings that are taken for no parameter of the catalogue are left out.
 */
export function conversionsOf(all: readonly TakenAs[], ground: Ground): ReadonlyMap<TakenAs, Conversion> {
  const numbers: NumberTaken[] = [];
  const wordsByTaken = new Map<TakenAs, WordTaken>();
  const counted = new Map<TakenAs, Conversion>();
  for (const taken of all) {
    const whole = parameterTaken(taken, ground.catalog);
    if (whole === undefined) continue;
    const found = partParameter(whole, taken.as);
    const { number } = taken.setting;
    const named = namedNumber(taken, found, ground);
    if (named !== null) counted.set(taken, named);
    else if (isNumber(taken, found.parameter.kind)) numbers.push({ taken, found, number });
    else wordsByTaken.set(taken, { taken, found });
  }
  for (const [taken, one] of numberConversions(numbers, ground)) counted.set(taken, one);
  return new Map(
    all.flatMap((taken): (readonly [TakenAs, Conversion])[] => {
      const number = counted.get(taken);
      if (number !== undefined) return [[taken, number]];
      const word = wordsByTaken.get(taken);
      return word === undefined ? [] : [[taken, wordConversion(word, ground)]];
    }),
  );
}

const alwaysNumbers: ReadonlySet<string> = new Set(['range', 'curve', 'place']);
const mostlyNumbers: ReadonlySet<string> = new Set(['quantity', 'count']);

/** A quantity may stand there as one of its words, such as `off`. */
function isNumber({ setting: { look }, counted }: TakenAs, kind: string): boolean {
  const isCounted = look === 'number' || counted?.table !== undefined;
  return alwaysNumbers.has(kind) || (mostlyNumbers.has(kind) && isCounted);
}
