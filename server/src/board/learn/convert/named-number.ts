import type { FoundParameter } from '../../../catalog/catalog';
import { previewOf } from './preview';
import type { Conversion, Ground, TakenAs } from './taken';

/** `out 3`, `M3`: what ends in its number. */
const named = /^(\p{L}[\p{L}\p{M} _.-]{0,20})([1-9]\d?)$/u;

/**
 * The number of a word in a list, where the board calls the places by names that end in their number; null for any other
 * value, and where somebody has said how it counts.
 */
export function namedNumber(
  taken: TakenAs,
  { parameter }: FoundParameter,
  ground: Ground,
): Conversion | null {
  const { as, counted, setting } = taken;
  if (typeof as !== 'object' || !('numberOf' in as) || counted !== undefined) return null;
  const [, name, number = ''] = named.exec(setting.value) ?? [];
  const most = parameter.kind === 'count' ? parameter.range[1] : 0;
  if (name === undefined || Number(number) > most) return null;
  const places = Array.from({ length: most }, (_, index) => String(index + 1));
  const meant = { counts: { table: Object.fromEntries(places.map((place) => [name + place, place])) } };
  const preview = previewOf(taken, meant, ground);
  return {
    sureness: 'likely',
    meant,
    why: 'its name ends in its number',
    preview,
    candidates: [],
    takesRole: false,
  };
}
