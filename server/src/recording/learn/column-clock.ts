import type { LayoutColumn } from '../../catalog/model/recording-layout';
import { shortNumber } from '../../units/number-text';
import { unitOf } from '../../units/unit';
import type { Behaviour } from './behaviour';
import type { UnitFound } from './column-unit';
import type { SaidHeading } from './heading-words';

const units = ['s', 'ms', 'us', 'ns'] as const;
/** Rows a second: of boards' logs, and of anything that is logged. */
const usualRates = [20, 40_000] as const;
const possibleRates = [0.2, 200_000] as const;
/** How long a recording is, s. */
const lengths = [0.5, 4 * 3600] as const;

/** The unit in which a rising column counts, by what its heading says and by how many rows a second that makes. */
export function columnClock(bare: LayoutColumn, said: SaidHeading, behaviour: Behaviour): UnitFound {
  const { step, isWhole } = behaviour;
  const rate = (unit: string) => 1 / (step * unitOf(unit).factor);
  const saidUnit = units.find((unit) => unit === said.unit);
  const means = (unit: string): LayoutColumn => ({ ...bare, unit });
  const rateText = (unit: string) => `${unit}: ${shortNumber(rate(unit))} rows a second`;
  const choices = (list: readonly string[]) =>
    list.map((unit) => ({ title: rateText(unit), means: means(unit) }));
  const isRate = (unit: string, [low, high]: readonly [number, number]) =>
    rate(unit) >= low && rate(unit) <= high;
  const long = (unit: string) => (behaviour.most - behaviour.least) * unitOf(unit).factor;
  const possible = units.filter((unit) => isRate(unit, possibleRates));
  if (saidUnit !== undefined && possible.includes(saidUnit))
    return { means: means(saidUnit), why: `it gives the unit ${saidUnit}`, asks: [] };
  const lasting = possible.filter((unit) => long(unit) >= lengths[0] && long(unit) <= lengths[1]);
  const usual = lasting.filter((unit) => isRate(unit, usualRates));
  const likely = usual.length > 0 ? usual : lasting;
  const [first] = likely;
  if (saidUnit !== undefined || first === undefined)
    return {
      means: means(first ?? 's'),
      why: 'it rises from row to row',
      asks: [
        {
          sentence: `It rises by ${shortNumber(step)} from row to row${saidUnit === undefined ? '' : `, and its heading says ${saidUnit}`}: what does it count?`,
          keepsOut: true,
          choices: choices(first === undefined ? units : likely),
        },
      ],
    };
  if (said.words.some((word) => word === 'tick' || word === 'ticks'))
    return {
      means: means(first),
      why: 'it rises from row to row',
      asks: [
        {
          sentence: 'It counts ticks, and nobody can know how long one is: in which unit does it count?',
          keepsOut: true,
          choices: [
            ...choices(likely),
            { title: '1/1024 s', means: { ...bare, unit: 's', scale: 1 / 1024 } },
          ],
        },
      ],
    };
  const countsRows = isWhole && step === 1 && said.unit === null;
  if (likely.length === 1 && !countsRows)
    return {
      means: means(first),
      why: `it rises by ${shortNumber(step)} from row to row, which is ${shortNumber(rate(first))} rows a second in ${first}`,
      asks: [],
    };
  return {
    means: means(first),
    why: 'it rises from row to row',
    asks: [
      {
        sentence: countsRows
          ? 'It rises by one from row to row, so that it may count milliseconds or rows: which is it? Of rows, say how many there are a second.'
          : `It rises by ${shortNumber(step)} from row to row: in which unit?`,
        keepsOut: true,
        choices: choices(likely),
      },
    ],
  };
}
