import type { Level } from '../../catalog/model/check';
import type { CheckedFile } from './checked-file';

/** How much was found in all files together. */
export function countsOf(checked: readonly CheckedFile[]): Readonly<Record<Level, number>> {
  const sum = (level: Level) => checked.reduce((count, { counts }) => count + counts[level], 0);
  return { 'must-fix': sum('must-fix'), risk: sum('risk'), note: sum('note'), tidy: sum('tidy') };
}
