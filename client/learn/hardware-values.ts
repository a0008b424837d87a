import type { Hardware } from '../../server/src/lsp/learn-protocol';
import type { Choices } from './fields';

/** The same with nothing where nothing is said. */
export function without<T extends object>(all: T): T {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as T;
}

/** A part of the hardware; undefined where nothing is said of it. */
export function part<T extends object>(all: T): T | undefined {
  const made = without(all);
  return Object.keys(made).length === 0 ? undefined : made;
}

export function some<T>(all: readonly T[]): T[] | undefined {
  return all.length === 0 ? undefined : [...all];
}

export function replaced<T>(all: readonly T[], index: number, next: T): readonly T[] {
  return all.map((one, other) => (other === index ? next : one));
}

export function said(value: string): string | undefined {
  return value === '' ? undefined : value;
}

export function whole(value: string): number | undefined {
  return value === '' ? undefined : Number(value);
}

export function text(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}

export function listOf(value: string): readonly string[] {
  return value
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

export function nextName(word: string, all: readonly { readonly name: string }[]): string {
  let number = all.length + 1;
  while (all.some(({ name }) => name === `${word}${number}`)) number += 1;
  return `${word}${number}`;
}

export const yesNoChoices: Choices = [
  ['', 'not known'],
  ['yes', 'yes'],
  ['no', 'no'],
];

export const sensorChoices: Choices = [
  ['', 'not known'],
  ['none', 'none'],
  ['barometer', 'barometer'],
  ['compass', 'compass'],
  ['barometer compass', 'both'],
];

export function sensorsOf(value: string): Hardware['sensors'] {
  if (value === '') return undefined;
  return (['barometer', 'compass'] as const).filter((one) => value.includes(one));
}

export function yesNo(value: boolean | undefined): string {
  return value === undefined ? '' : value ? 'yes' : 'no';
}

export function flagOf(value: string): boolean | undefined {
  return value === '' ? undefined : value === 'yes';
}
