import type { CraftKey } from '../../server/src/craft/keys';

/** Keys as texts, each of them once, but for those of lines: `setting gyro rate`, `setting sprint gyro rate`. */
export function spelled(keys: Iterable<CraftKey>): readonly string[] {
  const named = [...keys].filter(([kind]) => kind !== 'line');
  const texts = named.map((key) => [...key].filter((step) => step !== null).join(' '));
  return [...new Set(texts)];
}
