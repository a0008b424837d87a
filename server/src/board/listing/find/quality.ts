import { isSurelyValue, partingMarks } from '../forms/read-part';
import { numberLook } from '../number-look';
import { closing } from '../text/characters';
import { isKnownUnit } from '../unit-words';

/** How much a text looks like the name of a setting: 0 to 1. */
function nameQuality(name: string): number {
  const words = name.split(/\s+/);
  let quality = 1 - 0.03 * (words.length - 1) - (words.length > 4 ? 0.12 * (words.length - 4) : 0);
  if (name.length > 60) quality *= 0.6;
  // Blanks side by side are the gap of a column, seldom one within a name.
  if (/\S(?:\s\s|\t)/.test(name)) quality *= 0.6;
  // What parts names from values, or ends a sentence, stands in few names.
  if (/[=]|[;,|]\s|[:;,|=<>]$|^[=:;,|<>]|->|<-/.test(name)) quality *= 0.3;
  else if (/:\s/.test(name)) quality *= 0.65;
  if (/[.!?]$/.test(name)) quality *= 0.5;
  // A row of dots leads from a name to its value.
  if (/\.\.\.[:=]?$/.test(name)) quality *= 0.3;
  const last = words.at(-1) ?? '';
  if (name.includes('"') || last.lastIndexOf('<') > last.lastIndexOf('>')) quality *= 0.5;
  if (words.length > 1 && words.some((word) => /^[^\p{L}\p{N}([{<]|,/u.test(word))) quality *= 0.7;
  // Several numbers, or a bracket that is not closed, are the start of a value.
  if (words.slice(1).filter((word) => numberLook(word) !== null).length > 1 || !isClosed(name))
    quality *= 0.4;
  if (words.length > 1 && /\s\d+$/.test(name)) quality *= 0.85;
  if (/^\d+$/.test(name)) return quality * 0.95;
  if (numberLook(name) !== null) return quality * 0.5;
  if (words.length === 1 && isSurelyValue(name, '.') && !/^[\d[({<]/.test(name)) return quality * 0.6;
  return Math.max(0, quality);
}

/** `a > b` is a path. */
function isClosed(text: string): boolean {
  return [...closing].every(
    ([open, close]) => open === '<' || text.split(open).length === text.split(close).length,
  );
}

/** How well a name and a value go together: a number is no end of a name whose value is its unit. */
export function pairQuality(name: string, value: string): number {
  const last = name.split(/\s+/).slice(1).at(-1);
  const isTorn = last !== undefined && numberLook(last) !== null && isKnownUnit(value);
  return nameQuality(name) * valueQuality(value) * (isTorn ? 0.4 : 1);
}

/** How much a text looks like a value: 0 to 1. */
function valueQuality(value: string): number {
  if (value === '') return 0.75;
  if (/^(?:[=:,;|~]|->|=>|<-)/.test(value)) return 0.2;
  const words = value.split(/\s+/);
  const holdsMark = words.some((word, at) => at > 0 && partingMarks.has(word));
  const pairs = words.filter((word) => /[\p{L}\p{N}]=\S/u.test(word)).length;
  const ending =
    (2 * pairs >= words.length ? 0.8 : 1) * (/[:,;|]$/.test(value) ? 0.6 : 1) * (holdsMark ? 0.75 : 1);
  if (words.length === 1) return (isSurelyValue(value, '.') ? 1 : 0.96) * ending;
  if (/^["'`\u201c\u201e\u00ab]/.test(value)) return 0.95;
  const values = words.filter((word) => isSurelyValue(word, '.')).length;
  if (values === words.length) return 0.97;
  // A word and then a number: the word is the end of a name.
  if (values === 1 && isSurelyValue(words.at(-1) ?? '', '.')) return 0.6;
  return (words.length > 6 ? 0.75 : 0.86) * ending;
}
