import type { Frame } from '../listing';
import { isDamaged } from '../text/damage';
import type { ListingLine } from '../text/line';
import type { CompiledForms } from './compiled';
import { match } from './match';
import type { Template } from './template';

const longest = 400;

/** A line before or after the settings whose form is known; null for any other. */
export function frameOf(templates: readonly Template[], line: ListingLine, text: string): Frame | null {
  if (text.length > longest) return null;
  for (const template of templates) {
    if (template.fields.length === 0) {
      if (text.trim() === template.source.trim()) return { at: line.whole(), board: null, count: null };
      continue;
    }
    const found = match(template, text);
    if (found === null) continue;
    const textAt = (field: 'board' | 'count') => {
      const at = found.get(field);
      return at === undefined ? null : text.slice(at.start, at.end);
    };
    const [board, count] = [textAt('board'), textAt('count')];
    if (board === '' || (count !== null && !/^\d{1,9}$/.test(count))) continue;
    return { at: line.whole(), board, count: count === null ? null : Number(count) };
  }
  return null;
}

/** Whether a line that is no setting may be something that the board says before or after them. */
export function isProse(text: string, { lines }: CompiledForms): boolean {
  const words = text.trim().split(/\s+/);
  if (words.length < 2 || text.length > longest || isDamaged(text)) return false;
  const marks = lines.flatMap(({ template, negation }) => {
    const piece = template.literals[1]?.pieces[0];
    return negation === null && piece?.kind === 'text' ? [piece.text] : [];
  });
  // What holds the mark between names and values is a setting that could not be read.
  return !marks.some((mark) => text.includes(mark));
}
