import type { Stretch } from '../listing';
import { afterBlanks } from './characters';
import type { ListingLine } from './line';

/** Lines without what stood behind prompts. */
export interface Prompted {
  readonly lines: readonly ListingLine[];
  readonly prompts: readonly string[];
  readonly echoes: readonly Stretch[];
  /** Whether nothing but typed commands stands there: the lines are then the commands. */
  readonly isOnlyEchoes: boolean;
}

/** A name, or a place, and a mark right behind it; or the mark alone. */
const prompt =
  /^((?:[\p{L}~/][\p{L}\p{N}_@.:~/\\-]{0,60}|\[[^\]\s]{1,40}(?: [^\]\s]{1,40})?\]\s?)?(?:[$%>#\u00bb]|>>>?))(?:\s|$)/u;

const mostPrompts = 4;

/**
 * Takes prompts and the commands behind them out of a text. `known`: prompts of the board's profile. What begins every
 * line with a mark alone is how the listing is written, and no prompt.
 */
export function withoutPrompts(lines: readonly ListingLine[], known: readonly string[]): Prompted {
  const prompts = promptsIn(lines, known);
  const said = lines.filter(({ text }) => text.trim() !== '');
  const behind = said.filter(({ text }) => lengthOf(text, prompts) > 0);
  if (behind.length === 0) return { lines, prompts: known, echoes: [], isOnlyEchoes: false };
  const echoes = behind.flatMap((line) => {
    const start = afterBlanks(line.text, lengthOf(line.text, prompts));
    const end = line.text.trimEnd().length;
    return start < end ? [line.at(start, end)] : [];
  });
  const isOnlyEchoes = behind.length === said.length;
  const rest = lines.map((line) => {
    const length = lengthOf(line.text, prompts);
    return line.from(length === 0 ? 0 : isOnlyEchoes ? length : line.text.length);
  });
  return { lines: rest, prompts, echoes, isOnlyEchoes };
}

function lengthOf(text: string, prompts: readonly string[]): number {
  const start = text.length - text.trimStart().length;
  const found = prompts.find((one) => text.startsWith(one, start));
  if (found === undefined) return 0;
  const end = start + found.length;
  return end === text.length || /\s/.test(text[end] ?? '') ? end : 0;
}

/** Prompts of a text: those that come back, and the one that begins or ends it. */
function promptsIn(lines: readonly ListingLine[], known: readonly string[]): readonly string[] {
  const said = lines.filter(({ text }) => text.trim() !== '');
  const counts = new Map<string, number>();
  for (const { text } of said) {
    const found = promptOf(text);
    if (found !== undefined) counts.set(found, (counts.get(found) ?? 0) + 1);
  }
  const edges =
    said.length < 2 ? [] : [said[0], said.at(-1)].flatMap((line) => promptOf(line?.text ?? '') ?? []);
  // Different names before the same mark are settings, or groups of them: `rate> 5`.
  const named = [...counts].filter(([text]) => /\p{L}/u.test(text));
  const behind = named.reduce((sum, [, count]) => sum + count, 0);
  const isList =
    counts.size > mostPrompts ||
    (named.length > 1 && behind >= 0.8 * said.length) ||
    (counts.size > 1 && [...counts.values()].every((count) => count === 1));
  const found = [...counts]
    .filter(([text, count]) => (count > 1 || edges.includes(text)) && isPrompt(text, count, said.length))
    .map(([text]) => text);
  return [...new Set([...known, ...spacedPrompt(said.at(-1)), ...(isList ? aroundAll(said) : found)])].slice(
    0,
    8,
  );
}

/** What begins the first line, with a command behind it, and stands alone on the last: a prompt among whatever others. */
function aroundAll(said: readonly ListingLine[]): readonly string[] {
  const [first, last] = [said[0]?.text.trim() ?? '', said.at(-1)?.text.trim() ?? ''];
  return said.length > 2 && first !== last && promptOf(first) === last ? [last] : [];
}

/** What a line begins with as lines behind a prompt do, whether it is one or not. */
export function promptOf(text: string): string | undefined {
  return prompt.exec(text.trimStart().slice(0, 120))?.[1];
}

/** With a blank before its mark, only what stands alone on the last line is one: `dipper #`. */
function spacedPrompt(last: ListingLine | undefined): readonly string[] {
  const text = last?.text.trim() ?? '';
  return /^[\p{L}\p{N}_@.:~/-]{1,60} [$>#]$/u.test(text) ? [text] : [];
}

/** A mark alone before every line is part of the listing; `#` alone begins a comment, `%` may. */
function isPrompt(text: string, count: number, lines: number): boolean {
  const isMark = /^[^\p{L}\p{N}]+$/u.test(text);
  if (!isMark) return true;
  return text !== '#' && text !== '%' && count < 0.5 * lines;
}
