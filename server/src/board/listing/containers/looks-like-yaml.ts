import { isBlank, quotedAt } from '../text/characters';
import type { ListingLine } from '../text/line';

const mostLooked = 2000;
const leastShare = 0.6;
const other = /^\s*(?:-(?:\s|$)|#|---|\.\.\.|%YAML)/;

/**
 * Whether a text is YAML that lines alone do not tell: a document mark, lists, texts over several lines. Plain keys and
 * values with an indent are read as lines, which know what a board writes beside a value.
 */
export function looksLikeYaml(lines: readonly ListingLine[]): boolean {
  const said = lines.slice(0, mostLooked).filter(({ text }) => text.trim() !== '');
  if (said.length < 2) return false;
  if (areBelow(said)) return true;
  const isMarked = said.some(({ text }, at) => {
    if (/^---(?:\s|$)/.test(text))
      return at === 0 || said.slice(0, at).every((line) => /^\s*[#%]/.test(line.text));
    if (text.trimStart().startsWith('- ')) return beginsList(said[at - 1]?.text ?? '- ');
    return /:\s+[|>][+-]?\d?\s*$/.test(text) || /:\s+&\w+(?:\s|$)/.test(text);
  });
  const fitting = said.filter(({ text }) => isEntry(text) || other.test(text));
  const entries = fitting.filter(({ text }) => isEntry(text));
  return isMarked && entries.length > 0 && fitting.length >= leastShare * said.length;
}

const leastBelow = 2;
const shareBelow = 0.8;

/** Whether values stand alone in the line below their keys, further in. */
function areBelow(said: readonly ListingLine[]): boolean {
  const indentOf = ({ text }: ListingLine) => text.length - text.trimStart().length;
  const pairs = said.filter((line, at) => {
    const [value, next] = [said[at + 1], said[at + 2]];
    if (value === undefined || !/^\s*[^\s#-].*:\s*$/.test(line.text) || /:(?:\s|$)/.test(value.text))
      return false;
    const isDeeper = indentOf(value) > indentOf(line);
    return isDeeper && (next === undefined || indentOf(next) < indentOf(value));
  });
  return pairs.length >= leastBelow && 2 * pairs.length >= shareBelow * said.length;
}

/** What may stand before an entry of a list: another, or the key that holds them. */
function beginsList(line: string): boolean {
  const text = line.trim();
  return text.startsWith('- ') || text.endsWith(':');
}

/** Whether a line has a key, perhaps as the first of an entry of a list. */
function isEntry(line: string): boolean {
  let text = line.trimStart();
  while (text.startsWith('- ')) text = text.slice(2).trimStart();
  if (text.startsWith('#')) return false;
  const quoted = quotedAt(text, 0);
  const at = quoted === null ? text.indexOf(':') : quoted.after;
  return at > 0 && text[at] === ':' && (at + 1 === text.length || isBlank(text[at + 1]));
}
