import { isPlainName } from '../forms/parts-of-line';
import { isSurelyValue } from '../forms/read-part';
import type { Blocks } from '../text/blocks';
import { holdsMarks, isGroupName } from '../text/blocks';
import { afterQuote } from '../text/characters';
import type { ListingLine } from '../text/line';

const brackets = [
  ['{', '}'],
  ['(', ')'],
] as const;
const longestLine = 4000;
const mostLooked = 2000;

/** How groups open and close within the lines of a listing, if they do. */
export function blocksIn(lines: readonly ListingLine[]): Blocks | undefined {
  const texts = lines
    .slice(0, mostLooked)
    .flatMap(({ text }) => (text.length > longestLine || text.trim() === '' ? [] : [text.trim()]));
  for (const [open, close] of brackets) {
    const pairs = texts
      .flatMap((text) => pairsIn(text, open, close))
      .filter(({ before }) => isGroupName(before));
    const groups = pairs.filter(({ inner }) => isGroup(inner, open));
    // Behind a mark, brackets may hold a value.
    const others = pairs.filter(({ before, inner }) => !isGroup(inner, open) && !/[:=]\s*$/.test(before));
    const opened =
      open === '{' ? texts.filter((text) => text === open || tornAt(text, open, close)).length : 0;
    if (groups.length + opened === 0 || groups.length < others.length) continue;
    if (open === '(' && 3 * groups.length < texts.length) continue;
    // What parts a group from a setting before it parts settings.
    const hasComma = texts.some((text) => text.includes(open) && text.split(',').slice(1).some(beginsGroup));
    const isParted = texts.some(
      (text) => text.includes(';') && (text.includes(open) || text.includes(close)),
    );
    const comma = hasComma
      ? ({ between: ',' } as const)
      : betweenIn(groups.map(({ inner }) => inner).filter((inner) => !inner.includes(open)));
    return { open, close, ...(isParted ? { between: ';' } : comma) };
  }
  return undefined;
}

interface BlockPair {
  /** What stands before it, from the last mark on that parts settings. */
  readonly before: string;
  readonly inner: string;
}

const mostPairs = 64;

/** The brackets that open and close in a line, outside of quotes. */
function pairsIn(text: string, open: string, close: string): readonly BlockPair[] {
  const found: BlockPair[] = [];
  const stack: { readonly before: string; readonly at: number }[] = [];
  const unclosed = new Set<string>();
  let from = 0;
  for (let at = 0; at < text.length && found.length < mostPairs; at += 1) {
    const quoted = afterQuote(text, at, unclosed);
    if (quoted !== null) at = quoted - 1;
    else if (text[at] === open) stack.push({ before: text.slice(from, at), at });
    else if (text[at] === close) {
      const last = stack.pop();
      if (last !== undefined) found.push({ before: last.before, inner: text.slice(last.at + 1, at).trim() });
    }
    if (text[at] === open || /[;,)}]/.test(text[at] ?? '')) from = at + 1;
  }
  return found;
}

/** Whether a setting shares a line with a bracket that opens or closes a group elsewhere. */
function tornAt(text: string, open: Blocks['open'], close: string): boolean {
  const [opens, closes] = [text.split(open).length, text.split(close).length];
  if (opens === closes) return false;
  const inner = opens > closes ? text.slice(text.lastIndexOf(open) + 1) : text.slice(0, text.indexOf(close));
  return inner.trim() !== '' && isGroup(inner.trim(), open);
}

/** Whether what stands in brackets is settings for sure. */
function isGroup(text: string, open: Blocks['open']): boolean {
  if (text.includes(open)) return holdsMarks(text, { open });
  const pieces = text.split(/[;,]/).filter((piece) => piece.trim() !== '');
  return (
    pieces.length > 0 &&
    pieces.every((piece) => isMarkedSetting(piece) || isLooseSetting(piece.trim().split(/\s+/)))
  );
}

const mostWords = 3;
const longestWord = 60;

/** A name of few words, a mark, and something behind it. */
function isMarkedSetting(piece: string): boolean {
  const text = piece.trim();
  const mark = /[:=]|->/.exec(text);
  if (mark === null || !/^["']?[\p{L}_@]/u.test(text)) return false;
  const words = text.slice(0, mark.index).replace(/\s$/, '').split(/\s/);
  const isName =
    words.length <= mostWords && words.every((word) => word !== '' && word.length <= longestWord);
  return isName && /^\s?\S/.test(text.slice(mark.index + mark[0].length));
}

const longestName = 80;

/** Whether a name and an opening bracket begin a text. */
function beginsGroup(text: string): boolean {
  const at = text.search(/[;{}()]/);
  const name = text.slice(0, Math.max(0, at)).trimStart();
  return /[{(]/.test(text[at] ?? '') && name.length <= longestName && /^[\p{L}_"']/u.test(name);
}

function isLooseSetting([name = '', value, ...more]: readonly string[]): boolean {
  return isPlainName(name) && value !== undefined && (isSurelyValue(value, '.') || more.length === 0);
}

/** A comma, where it parts the settings of a group in one line, and no values. */
function betweenIn(groups: readonly string[]): Pick<Blocks, 'between'> {
  const pieces = groups.flatMap((text) => text.split(','));
  const areSettings = pieces.every(
    (piece) => piece.trim() === '' || /^\s*["'\p{L}_@][^\s]*\s*(?:[:=]|\s)/u.test(piece),
  );
  return areSettings && pieces.length > groups.length ? { between: ',' } : {};
}
