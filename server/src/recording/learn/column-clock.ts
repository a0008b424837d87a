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
  const { possible, likely } = unitsThatFit(behaviour);
  const means = (unit: string): LayoutColumn => ({ ...bare, unit });
  const choices = (list: readonly string[]) =>
    list.map((unit) => ({
      title: `${unit}: ${shortNumber(rateIn(unit, step))} rows a second`,
      means: means(unit),
    }));
  const saidUnit = units.find((unit) => unit === said.unit);
  if (saidUnit !== undefined && possible.includes(saidUnit))
    return { means: means(saidUnit), why: `it gives the unit ${saidUnit}`, asks: [] };
  const [first] = likely;
  const asking = (sentence: string, offered: ReturnType<typeof choices>): UnitFound => ({
    means: means(first ?? 's'),
    why: 'it rises from row to row',
    asks: [{ sentence, keepsOut: true, choices: offered }],
  });
  const rising = `It rises by ${shortNumber(step)} from row to row`;
  if (saidUnit !== undefined || first === undefined)
    return asking(
      `${rising}${saidUnit === undefined ? '' : `, and its heading says ${saidUnit}`}: what does it count?`,
      choices(first === undefined ? units : likely),
    );
  if (said.words.some((word) => word === 'tick' || word === 'ticks'))
    return asking('It counts ticks, and nobody can know how long one is: in which unit does it count?', [
      ...choices(likely),
      { title: '1/1024 s', means: { ...bare, unit: 's', scale: 1 / 1024 } },
    ]);
  if (isWhole && step === 1 && said.unit === null)
    return asking(
      'It rises by one from row to row, so that it may count milliseconds or rows: which is it? Of rows, say how many there are a second.',
      choices(likely),
    );
  if (likely.length > 1) return asking(`${rising}: in which unit?`, choices(likely));
  return {
    means: means(first),
    why: `it rises by ${shortNumber(step)} from row to row, which is ${shortNumber(rateIn(first, step))} rows a second in ${first}`,
    asks: [],
  };
}

/** Rows a second. */
function rateIn(unit: string, step: number): number {
  return 1 / (step * unitOf(unit).factor);
}

/** The units that make a rate of rows which there can be; and of these the ones that make usual rates, if any do. */
function unitsThatFit({ step, least, most }: Behaviour) {
  const isRate = (unit: string, [low, high]: readonly [number, number]) =>
    rateIn(unit, step) >= low && rateIn(unit, step) <= high;
  const long = (unit: string) => (most - least) * unitOf(unit).factor;
  const possible = units.filter((unit) => isRate(unit, possibleRates));
  const lasting = possible.filter((unit) => long(unit) >= lengths[0] && long(unit) <= lengths[1]);
  const usual = lasting.filter((unit) => isRate(unit, usualRates));
  return { possible, likely: usual.length > 0 ? usual : lasting };
}
