import { roleOf } from '../containers/roles';
import type { LineFormData } from '../forms/compiled';
import { quotedAt } from '../text/characters';
import type { Sample } from './sample';

/** Settings that stand in lines of keys with values: `id="tern" val="5"`. */
export interface AttributesFound {
  readonly form: LineFormData;
  readonly beside: readonly string[];
}

interface AttributePair {
  readonly key: string;
  /** Where the key begins, and where the value ends. */
  readonly start: number;
  readonly end: number;
  readonly value: string;
}

const leastShare = 0.8;
const mostKeys = 16;
const longestForm = 200;

/** The form of lines that all have the same keys, one of which holds the name and one the value; null for others. */
export function attributesIn(sample: readonly Sample[]): AttributesFound | null {
  const lines = sample.flatMap(({ text }) => {
    const pairs = pairsIn(text);
    return pairs.length >= 2 ? [{ text, pairs }] : [];
  });
  if (lines.length < 2 || lines.length < leastShare * sample.length) return null;
  const keys = keysOf(lines.map(({ pairs }) => pairs));
  const [name, value] = [keyFor('name', keys, lines), keyFor('value', keys, lines)];
  if (name === null || value === null || name === value) return null;
  const [first] = lines.filter(
    ({ pairs }) => indexOf(pairs, name) >= 0 && indexOf(pairs, name) < indexOf(pairs, value),
  );
  return first === undefined ? null : formOf(first.text, first.pairs, name, value, keys);
}

/** `key=value` pairs whose values are in quotes or one word. */
function pairsIn(text: string): readonly AttributePair[] {
  const pairs: AttributePair[] = [];
  let from = 0;
  for (let at = text.indexOf('='); at >= 0 && pairs.length < mostKeys; at = text.indexOf('=', from)) {
    const start = keyStart(text, from, at);
    const quoted = quotedAt(text, at + 1);
    let end = quoted?.after ?? at + 1;
    if (quoted === null) while (end < text.length && !/[\s,;>/]/.test(text[end] ?? '')) end += 1;
    const value = quoted === null ? text.slice(at + 1, end) : text.slice(quoted.start, quoted.end);
    if (start < at) pairs.push({ key: text.slice(start, at), start, end, value });
    from = Math.max(end, at + 1);
  }
  return pairs;
}

const longestKey = 60;

/** Where the word begins that ends at `to`. */
function keyStart(text: string, from: number, to: number): number {
  let start = to;
  while (start > from && to - start < longestKey && /[\p{L}\p{N}_.-]/u.test(text[start - 1] ?? ''))
    start -= 1;
  return start;
}

/** Keys that stand in most lines or come back: their number is small, however many lines there are. */
function keysOf(lines: readonly (readonly AttributePair[])[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const pairs of lines)
    for (const key of new Set(pairs.map((pair) => pair.key))) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

function keyFor(
  role: 'name' | 'value',
  keys: ReadonlyMap<string, number>,
  lines: readonly { readonly pairs: readonly AttributePair[] }[],
): string | null {
  const found = [...keys].filter(
    ([key, count]) => roleOf(key) === role && count >= leastShare * lines.length,
  );
  return found[0]?.[0] ?? null;
}

function indexOf(pairs: readonly AttributePair[], key: string): number {
  return pairs.findIndex((pair) => pair.key === key);
}

function formOf(
  text: string,
  pairs: readonly AttributePair[],
  name: string,
  value: string,
  keys: ReadonlyMap<string, number>,
): AttributesFound | null {
  const from = indexOf(pairs, name);
  const to = indexOf(pairs, value);
  const before = text.slice(0, pairs[from]?.start ?? 0);
  const between = text.slice(pairs[to - 1]?.end ?? 0, pairs[to]?.start ?? 0);
  const last = pairs.at(-1)?.end ?? text.length;
  const middle = pairs.slice(from + 1, to).map(({ key }) => `${between}${key}=${fieldOf(key)}`);
  const form = `${before}${name}={name}${middle.join('')}${between}${value}={value}${text.slice(last)}`;
  const beside = [...keys.keys()]
    .filter((key) => key !== name && key !== value && !pairs.slice(from, to).some((pair) => pair.key === key))
    .map((key) => ` ${key}=${fieldOf(key)}`);
  return form.length > longestForm ? null : { form: { form }, beside };
}

function fieldOf(key: string): string {
  const role = roleOf(key);
  const isSaid = ['unit', 'range', 'low', 'high', 'words', 'default'].includes(role);
  return `{${isSaid ? role : 'remark'}}`;
}
