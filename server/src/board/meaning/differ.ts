import type { Value } from '../../craft/value';
import { nearlyEqual } from '../../units/nearly-equal';
import type { HeldBy } from './meanings';

/** Whether the board's value is another one than the script's; binary dust is none. */
export function differ(one: Value, other: Value, by: HeldBy): boolean {
  if (one.kind !== other.kind) return true;
  switch (one.kind) {
    case 'quantity':
    case 'count':
      return !nearlyEqual(one.value, (other as typeof one).value);
    case 'range': {
      const { low, high } = other as typeof one;
      return !nearlyEqual(one.low, low) || !nearlyEqual(one.high, high);
    }
    case 'place': {
      const place = other as typeof one;
      return one.row !== place.row || one.column !== place.column;
    }
    case 'words':
      return listText(one.value, by) !== listText((other as typeof one).value, by);
    case 'curve':
      // Between its samples the board draws its own line: only what it was told can be compared.
      return by !== 'samples' && JSON.stringify(one) !== JSON.stringify(other);
    default:
      return one.value !== (other as typeof one).value;
  }
}

/** Settings that say which words a list has say nothing of their order. */
function listText(words: readonly string[], by: HeldBy): string {
  return (by === 'flags' ? words.toSorted() : words).join('\n');
}
