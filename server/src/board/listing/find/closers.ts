import type { ListingLine } from '../text/line';

const marks: ReadonlySet<string> = new Set(['}', '};', '},', ']', '];', '],', ')', ');', '),']);
const words: ReadonlySet<string> = new Set([
  'end',
  'END',
  'End',
  'end;',
  'ende',
  'Ende',
  'ENDE',
  'fin',
  'FIN',
  'Fin',
]);

/** Whether a line is a word that ends something, and no more. */
export function isEndWord(text: string): boolean {
  return words.has(text);
}

/** Lines that end a group, among these: brackets for sure, words and tags where there are as many as headings. */
export function closersIn(lines: readonly ListingLine[], headings: number): readonly string[] {
  if (headings === 0) return [];
  const counts = new Map<string, number>();
  for (const { text } of lines) {
    const body = text.length > 60 ? '' : text.trim();
    if (marks.has(body) || words.has(body) || /^<\/[\w-]{1,40}>$/.test(body))
      counts.set(body, (counts.get(body) ?? 0) + 1);
  }
  return [...counts]
    .filter(([text, count]) => marks.has(text) || 2 * count >= headings)
    .sort(([, one], [, other]) => other - one)
    .slice(0, 8)
    .map(([text]) => text);
}
