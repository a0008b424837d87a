import { isDigit, isLetterOrDigit } from '../text/characters';
import type { Sample } from './sample';

/** What stands around the settings of most lines, as parts of a template. */
export interface Decoration {
  readonly prefix: string;
  readonly suffix: string;
}

const share = 0.6;
const shareOfIndex = 0.85;

/** The ways in which the lines may be decorated: plainly first. */
export function decorationsOf(sample: readonly Sample[]): readonly Decoration[] {
  const suffix = mostOf(sample, ({ text }) => endOf(text), share) ?? '';
  const prefix = mostOf(sample, ({ text }) => leadOf(text), share);
  const index = indexPrefix(sample, prefix ?? '');
  const prefixes = ['', ...(prefix === null ? [] : [prefix]), ...(index === null ? [] : [index])];
  return prefixes.map((lead) => ({ prefix: lead, suffix }));
}

/** What ends a line; a point only behind what it may end. */
function endOf(text: string): string {
  const last = text.at(-1) ?? '';
  if (last === '.') return /[\p{L}\p{N}%"']/u.test(text.at(-2) ?? '') ? last : '';
  return /[;,|]/.test(last) ? last : '';
}

/** Marks with a blank behind them, before the first word. */
function leadOf(text: string): string {
  let end = 0;
  while (end < text.length && end < 8 && !isLetterOrDigit(text[end]) && !/["'`\s]/.test(text[end] ?? ''))
    end += 1;
  return end > 0 && text[end] === ' ' ? text.slice(0, end + 1) : '';
}

function mostOf(sample: readonly Sample[], part: (line: Sample) => string, least: number): string | null {
  const counts = new Map<string, number>();
  for (const line of sample) {
    const found = part(line);
    if (found !== '') counts.set(found, (counts.get(found) ?? 0) + 1);
  }
  const [best] = [...counts].sort(([, one], [, other]) => other - one);
  return best !== undefined && best[1] >= least * sample.length ? best[0] : null;
}

/** `12. ` before each name, counting up by one: `{index}. `; null where the lines have no such number. */
function indexPrefix(sample: readonly Sample[], prefix: string): string | null {
  const numbers: number[] = [];
  const forms = new Map<string, number>();
  for (const { text } of sample) {
    const found = indexOf(text.startsWith(prefix) ? text.slice(prefix.length) : text);
    if (found === null) continue;
    numbers.push(found.number);
    forms.set(found.form, (forms.get(found.form) ?? 0) + 1);
  }
  const [form] = [...forms].sort(([, one], [, other]) => other - one);
  if (form === undefined || form[1] < share * sample.length || numbers.length < 2) return null;
  const steps = numbers.filter((number, at) => at > 0 && number === (numbers[at - 1] ?? 0) + 1).length;
  return steps >= shareOfIndex * (numbers.length - 1) ? prefix + form[0] : null;
}

function indexOf(text: string): { readonly form: string; readonly number: number } | null {
  const open = /^[#([<]?/.exec(text)?.[0] ?? '';
  let end = open.length;
  while (isDigit(text[end])) end += 1;
  const digits = text.slice(open.length, end);
  const close = /^[\])>]?[.:,;|]?\s?/.exec(text.slice(end, end + 4))?.[0] ?? '';
  const next = text.slice(end + close.length).trimStart()[0];
  if (digits === '' || digits.length > 7 || close === '' || next === undefined || isDigit(next)) return null;
  const isName = isLetterOrDigit(next) || /["'_@|]/.test(next);
  return isName ? { form: `${open}{index}${close}`, number: Number(digits) } : null;
}
