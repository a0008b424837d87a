import type { StatedTruth, Value } from './listing';
import type { Lot } from './lot';
import type { Shape } from './shape';
import { type House, type Look, valueIn } from './values';
import { choices, remarkWords } from './words';

const ranged: readonly Look[] = ['whole', 'negative', 'glued unit', 'unit'];

/** What a listing says of a setting beside its value, of the kinds that the shape prints. */
export function statedOf({ states }: Shape, house: House, value: Value, lot: Lot): StatedTruth | null {
  const says = (kind: keyof StatedTruth, share: number) => lot.chance(share) && states.includes(kind);
  const stated = {
    range: says('range', 0.7) ? rangeAround(value, lot) : null,
    words: says('words', 0.7) ? wordsWith(value, house, lot) : null,
    default: says('default', 0.3) ? defaultLike(value, house, lot) : null,
    remark: says('remark', 0.3) ? lot.some(remarkWords, 3).join(' ') : null,
  };
  return Object.values(stated).every((part) => part === null) ? null : stated;
}

function rangeAround({ look, text }: Value, lot: Lot): StatedTruth['range'] {
  if (!ranged.includes(look)) return null;
  const [below, above] = [lot.whole(50), lot.whole(500) + 1];
  const low = Number(text) < 0 || lot.chance(0.3) ? Number(text) - below : 0;
  return { low: String(low), high: String(Number(text) + above) };
}

function wordsWith({ look, text }: Value, { flags }: House, lot: Lot): StatedTruth['words'] {
  if (look === 'flag') return flags;
  if (look !== 'word') return null;
  const others = choices.filter((word) => word !== text);
  return [text, ...lot.some(others, 1 + lot.whole(3))].sort();
}

function defaultLike({ look, text }: Value, house: House, lot: Lot): string | null {
  if (!['whole', 'negative', 'decimal', 'hex', 'flag'].includes(look)) return null;
  return lot.chance(0.5) ? text : valueIn(look, house, lot).text;
}
