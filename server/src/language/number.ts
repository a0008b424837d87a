import type { LineFix, Problem } from './ast';
import { lookAlikeDegree, lookAlikeSpace } from './look-alikes';
import { characterPhrase, problem, replacement } from './problem';
import type { NumberToken } from './token';

interface NumberReading {
  readonly token: NumberToken;
  readonly problems: readonly Problem[];
}

/** What may be meant as a number: digits and what people put among and around them. */
const rough =
  /(?:0[xXbBoO][0-9A-Fa-f]+(?![A-Za-z])|(?:\d[\d_]*(?:\.(?!\.)[\d_]*)*|\.\d[\d_]*)(?:[eE](?:[+-]?\d+|(?![A-Za-z/^*%])[+-]?))?)/y;
/** Two dots make a range: they are in no number, so that a long line of ranges is read once and not at each number. */
const withCommas = /\d[\d_]*(?:\.(?!\.)[\d_]*)*(?:,\d[\d_]*(?:\.(?!\.)[\d_]*)*)+/y;
const grouped = /\d{1,3}(?: \d{3})+(?![\d.,])/y;
const exact = /^(?:\d+(?:_\d+)*(?:\.\d+(?:_\d+)*)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const symbol = String.raw`[A-Za-z\u00b5\u03bc\u2126\u03a9\u00b0\u00ba\u02da%]+(?:\^-?\d{1,2}|\d+)?`;
const unitText = new RegExp(String.raw`${symbol}(?:[*/](?:${symbol}|\(${symbol}(?:[*/]${symbol})*\)))*`, 'y');

/**
 * Reads a number and its unit at `start`. Undefined when there is no number there. `inList`: commas
 * separate. What looks like a number and is none (`0x10`, `1e`, `5.`) is refused whole, never in part.
 */
export function readNumber(line: string, start: number, inList: boolean): NumberReading | undefined {
  const comma = inList ? undefined : matchAt(withCommas, line, start);
  const groups = matchAt(grouped, line, start);
  const text = comma ?? groups ?? matchAt(rough, line, start);
  if (text === undefined) return undefined;
  const digitsEnd = start + text.length;
  const problems: Problem[] = [];
  const value = numberOf(text, { start, end: digitsEnd }, problems);
  const unit = readUnit(line, digitsEnd, problems);
  const end = unit?.end ?? digitsEnd;
  return { token: { kind: 'number', value, digits: text, digitsEnd, unit, start, end }, problems };
}

function numberOf(text: string, span: { start: number; end: number }, problems: Problem[]): number | null {
  const value = Number(text.replaceAll('_', ''));
  // Past this, digits would be lost without a word.
  if (exact.test(text) && value <= Number.MAX_SAFE_INTEGER) return value;
  const refused = exact.test(text)
    ? 'line/number-too-large'
    : text.includes(',')
      ? 'line/decimal-comma'
      : 'line/not-a-number';
  const meant = readings(text);
  const fixes: LineFix[] = meant.map((one) => replacement('Write {to}', span, one));
  problems.push(problem(refused, span, { given: text }, fixes));
  return meant.length === 1 ? Number(meant[0]) : null;
}

/** The ways to read a number that is written wrongly, the likeliest first; only a single one is believed. */
function readings(text: string): readonly string[] {
  if (text.includes(' ')) return [text.replaceAll(' ', '')];
  if (/^\d+\.$/.test(text)) return [text.slice(0, -1)];
  if (/^[1-9]\d{0,2}(,\d{3}){2,}(\.\d+)?$/.test(text)) return [text.replaceAll(',', '')];
  const parts = text.split(',');
  const [whole = '', rest = ''] = parts;
  if (parts.length !== 2) return [];
  if (/^\d{1,3},\d{3}\.\d+$/.test(text) && whole !== '0') return [text.replace(',', '')];
  if (!/^\d+$/.test(rest)) return [];
  if (/^\d{1,3}(\.\d{3})+$/.test(whole)) return [`${whole.replaceAll('.', '')}.${rest}`];
  if (!/^\d+$/.test(whole)) return [];
  const decimal = `${whole}.${rest}`;
  // The comma may stand between thousands as well.
  const isGrouping = rest.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
  return isGrouping ? [whole + rest, decimal] : [decimal];
}

/** The unit after a number, with or without a space between. */
function readUnit(line: string, from: number, problems: Problem[]): NumberToken['unit'] {
  let start = from;
  while (line[start] === ' ' || line[start] === '\t' || lookAlikeSpace.has(line[start] ?? '')) start += 1;
  const written = matchAt(unitText, line, start);
  if (written === undefined || line[start + written.length] === '(') return null;
  const text = [...written].map((character) => (lookAlikeDegree.has(character) ? '°' : character)).join('');
  if (text !== written) {
    const at = [...written].findIndex((character) => lookAlikeDegree.has(character));
    const span = { start: start + at, end: start + at + 1 };
    const values = { character: characterPhrase(written[at] ?? '') };
    problems.push(problem('line/odd-degree', span, values, [replacement('Write deg', span, 'deg')]));
  }
  return { text, start, end: start + written.length };
}

function matchAt(pattern: RegExp, line: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(line)?.[0];
}
