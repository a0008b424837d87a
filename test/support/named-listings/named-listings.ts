import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A setting of a made-up listing with what it really stands for; null: with nothing of the catalogue. */
export interface NamedSetting {
  readonly group: string;
  readonly name: string;
  readonly value: string;
  /** `switch.<function>.on arm low`: the parameter, its member and its part, where it has them. */
  readonly means: string | null;
}

type Language = 'english' | 'german' | 'french';
const columns: Readonly<Record<Language, number>> = { english: 2, german: 3, french: 4 };

/** The settings that a small craft is set up by, as a board of that language would name them. */
export function namedIn(language: Language): readonly NamedSetting[] {
  return rowsOf('settings.txt').map((fields) => {
    const [means = '', value = ''] = fields;
    const [group = '', name = ''] = (fields[columns[language]] ?? '').split(' / ');
    return { group, name, value, means };
  });
}

/** Settings that a board has for itself. */
export function ownSettings(): readonly NamedSetting[] {
  return rowsOf('own.txt').map(([path = '', value = '']) => {
    const [group = '', name = ''] = path.split(' / ');
    return { group, name, value, means: null };
  });
}

/** The same settings under numbers. */
export function numbered(settings: readonly NamedSetting[]): readonly NamedSetting[] {
  return settings.map((one, index) => ({
    ...one,
    group: String(Math.floor(index / 20)),
    name: String(100 + 7 * index),
  }));
}

/** The same settings with short names, put together as `style` says. */
export function shortened(
  settings: readonly NamedSetting[],
  style: 'camel' | 'snake',
): readonly NamedSetting[] {
  return settings.map((one) => ({ ...one, group: joined(one.group, style), name: joined(one.name, style) }));
}

function joined(text: string, style: 'camel' | 'snake'): string {
  const words = text
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '' && !bridging.has(word));
  const short = words.map(shortForm);
  if (style === 'snake') return short.join('_');
  return short.map((word, at) => (at === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1))).join('');
}

const bridging = new Set(['the', 'of', 'for', 'on', 'once', 'after', 'before', 'a', 'in']);

/** One of four ways to shorten, by the word itself, so that a word is shortened alike throughout. */
function shortForm(word: string): string {
  if (word.length < 5) return word;
  const bones = word.charAt(0) + word.slice(1).replace(/[aeiou]/g, '');
  const sum = [...word].reduce((total, letter) => total + letter.charCodeAt(0), 0);
  switch (sum % 4) {
    case 0:
      return bones.length >= 3 ? bones.slice(0, 5) : word.slice(0, 4);
    case 1:
      return word.slice(0, 4);
    case 2:
      return word.slice(0, 3);
    default:
      return bones.length >= 4 ? bones : word;
  }
}

/** A text as a board prints it: sections in brackets. */
export function listingText(settings: readonly NamedSetting[]): string {
  let group = '';
  return settings
    .flatMap((one) => {
      const heading = one.group === group ? [] : [`[${one.group}]`];
      group = one.group;
      return [...heading, `${one.name} = ${one.value}`];
    })
    .join('\n');
}

function rowsOf(file: string): readonly (readonly string[])[] {
  const lines = readFileSync(join(__dirname, file), 'utf8').split('\n');
  return lines.filter((line) => line !== '' && !line.startsWith('#')).map((line) => line.split(' | '));
}
