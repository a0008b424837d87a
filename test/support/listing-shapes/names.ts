import type { Lot } from './lot';
import { firsts, french, german, greek, places, seconds } from './words';

export const nameStyles = [
  'plain',
  'abbreviated',
  'german',
  'french',
  'greek',
  'digits',
  'blanks',
  'dots',
  'slashes',
  'at',
] as const;

export type NameStyle = (typeof nameStyles)[number];

/** Between the words of a name; one listing has one. */
export const joints = ['-', '_', ''] as const;

type Joint = (typeof joints)[number];

function joinedBy(joint: Joint, words: readonly string[]): string {
  if (joint !== '') return words.join(joint);
  return words
    .map((word, index) => (index === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1)))
    .join('');
}

function short(word: string): string {
  return word.charAt(0) + word.slice(1).replace(/[aeiou]/g, '');
}

const drawn: Readonly<Record<NameStyle, (joint: Joint, lot: Lot) => readonly string[]>> = {
  plain: (joint, lot) => [joinedBy(joint, [lot.one(firsts), lot.one(seconds)])],
  abbreviated: (_, lot) => [`${short(lot.one(firsts))}_${short(lot.one(seconds))}`],
  german: (joint, lot) => [joinedBy(joint, [lot.one(german), ...lot.some(german, lot.whole(2))])],
  french: (joint, lot) =>
    lot.chance(0.2)
      ? [lot.one(french), "d'arrêt"]
      : [joinedBy(joint, [lot.one(french), ...lot.some(['bas', 'haut'], lot.whole(2))])],
  greek: (joint, lot) => [joinedBy(joint, [lot.one(seconds), `${lot.one(greek)}${lot.whole(9)}`])],
  digits: (_, lot) => [String(lot.whole(900) + 100)],
  blanks: (_, lot) => [lot.one(firsts), lot.one(seconds)],
  dots: (_, lot) => [`${lot.one(firsts)}.${lot.one(seconds)}`],
  slashes: (_, lot) => [`${lot.one(firsts)}/${lot.one(seconds)}`],
  at: (_, lot) => [`${lot.one(seconds)}@${lot.one(places)}`],
};

/** A name of a style; some have words with blanks between them. */
export function nameIn(style: NameStyle, joint: Joint, lot: Lot): string {
  return drawn[style](joint, lot).join(' ');
}

/** Another name of the same style, for one that is taken. */
export function furtherName(style: NameStyle, name: string, count: number): string {
  return style === 'digits' ? String(Number(name) + 1000 * count) : `${name}${count}`;
}
