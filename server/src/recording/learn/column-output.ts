import type { RecordingColumns } from '../../catalog/model/recording-columns';
import type { LayoutColumn } from '../../catalog/model/recording-layout';
import { shortNumber } from '../../units/number-text';
import type { Behaviour } from './behaviour';
import type { UnitFound } from './column-unit';

type Full = RecordingColumns['fulls'][number];
/** The least pulse that a motor is told, and the longest, with what boards go beyond them. */
const pulses = [850, 2200] as const;
/** Choices that a person can look over. */
const mostChoices = 5;

/**
 * From what to what an output counts, by all columns of its kind together: motors lie between idle and full, and who
 * reaches full stands there.
 */
export function columnOutput(
  bare: LayoutColumn,
  unit: string | null,
  all: Pick<Behaviour, 'least' | 'most' | 'isWhole'>,
  { fulls }: RecordingColumns,
): UnitFound {
  const found = fulls.find((one) => isSurely(one, unit, all));
  const span = `${shortNumber(all.least)} to ${shortNumber(all.most)}`;
  if (found !== undefined)
    return { means: scaledTo(bare, found), why: `from ${span} it counts ${found.what}`, asks: [] };
  const possible = fulls.filter(({ full, idle }) => full >= all.most && idle <= Math.max(0, all.least));
  const choices = possible.slice(0, mostChoices).map((one) => ({
    title: `${one.what}: ${shortNumber(one.idle)} is idle, ${shortNumber(one.full)} full`,
    means: scaledTo(bare, one),
  }));
  return {
    means: choices[0]?.means ?? bare,
    why: 'its scale is not sure',
    asks: [
      {
        sentence: `Its numbers go from ${span}: what does the logger write at idle, and what at full?`,
        keepsOut: true,
        choices,
      },
    ],
  };
}

function isSurely(
  { full, idle }: Full,
  unit: string | null,
  { least, most, isWhole }: Pick<Behaviour, 'least' | 'most' | 'isWhole'>,
): boolean {
  if (unit === '%') return full === 100 && most <= 100.5 && least >= -0.5;
  if (idle > 0) return (unit === null || unit === 'us') && least >= pulses[0] && most <= pulses[1];
  if (unit !== null || least < 0) return false;
  // Counts are whole; what is written with a part of one is a share or per cent.
  if (full === 100 && !isWhole) return most > 1 && most <= 100;
  return full === 1 ? most <= 1 && !isWhole : most === full;
}

function scaledTo(bare: LayoutColumn, { idle, full }: Full): LayoutColumn {
  return { ...bare, zero: idle, full };
}
