import type { Craft } from '../../craft/craft';

/**
 * Whether a member is worth offering: of a numbered collection only those that the craft has and the next free one,
 * since any of thirty-two would be right and none of them new.
 */
export function isWorthOffering(craft: Craft, collection: string, name: string): boolean {
  if (!/^\d+$/.test(name) || craft.catalog.collection(collection)?.keys.kind !== 'numbers') return true;
  const number = Number(name);
  const has = (other: number) => craft.members(collection).includes(String(other));
  return has(number) || number === 1 || has(number - 1);
}
