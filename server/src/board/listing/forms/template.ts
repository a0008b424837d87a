import { afterBlanks, isBlank, isLetterOrDigit, trimmed } from '../text/characters';

/** What a template may hold a field for. */
export const fields = [
  'group',
  'member',
  'index',
  'name',
  'value',
  'unit',
  'range',
  'low',
  'high',
  'words',
  'default',
  'remark',
  'board',
  'count',
] as const;

export type Field = (typeof fields)[number];

/** What a listing says beside a value. */
export const besideFields: readonly Field[] = ['unit', 'range', 'low', 'high', 'words', 'default', 'remark'];

/** How wide a gap of a literal must be: any blank, two or more, a tab. */
type Gap = 'none' | 'blank' | 'wide' | 'tab';

type TemplatePiece =
  | { readonly kind: 'text'; readonly text: string }
  /** A row of one character: `...` stands for two or more. */
  | { readonly kind: 'row'; readonly character: string }
  | { readonly kind: 'gap'; readonly gap: Gap };

/** What stands between two fields. Without a gap at an end, blanks may stand there all the same. */
export interface Literal {
  readonly pieces: readonly TemplatePiece[];
  readonly before: Gap;
  readonly after: Gap;
}

/** Whether a literal is nothing but blanks. */
export function isOnlyGap({ pieces }: Literal): boolean {
  return pieces.length === 0;
}

/**
 * A line as literals and fields in turn, literals first and last, perhaps empty. It is read without patterns and
 * without going back, and written by filling in its fields.
 */
export interface Template {
  readonly source: string;
  readonly fields: readonly Field[];
  readonly literals: readonly Literal[];
}

const known: ReadonlyMap<string, Field> = new Map(fields.map((field) => [field, field]));

/** Reads a template; braces around anything but a field are literal. */
export function templateOf(source: string): Template {
  const found: Field[] = [];
  const literals: string[] = [''];
  for (const [at, part] of source.split(/(\{[a-z]+\})/).entries()) {
    const field = at % 2 === 1 ? known.get(part.slice(1, -1)) : undefined;
    if (field === undefined) literals.push((literals.pop() ?? '') + part);
    else {
      found.push(field);
      literals.push('');
    }
  }
  return { source, fields: found, literals: literals.map(literalOf) };
}

/** What is wrong with a template that needs some fields and allows others: a sentence without its subject. */
export function templateFault(
  source: string,
  needed: readonly Field[],
  allowed: readonly Field[],
): string | null {
  const template = templateOf(source);
  const named = (list: readonly Field[]) => list.map((field) => `{${field}}`).join(', ');
  const missing = needed.find((field) => !template.fields.includes(field));
  if (missing !== undefined) return `needs the field {${missing}}`;
  const wrong = template.fields.find((field) => !allowed.includes(field));
  if (wrong !== undefined) return `cannot hold {${wrong}}; it may hold ${named(allowed)}`;
  const twice = template.fields.find((field, index) => template.fields.indexOf(field) !== index);
  if (twice !== undefined) return `holds {${twice}} twice`;
  const touching = template.literals
    .slice(1, -1)
    .some(({ pieces, before }) => pieces.length === 0 && before === 'none');
  return touching ? 'has two fields with nothing between them, which cannot be told apart' : null;
}

/** The line with its fields filled in. */
export function filled(template: Template, values: ReadonlyMap<Field, string>): string {
  return template.source.replace(/\{([a-z]+)\}/g, (whole, name: string) => {
    const field = known.get(name);
    return field === undefined ? whole : (values.get(field) ?? '');
  });
}

function literalOf(source: string): Literal {
  const [start, end] = trimmed(source);
  if (start === end) return { pieces: [], before: gapOf(source), after: gapOf(source) };
  return {
    pieces: piecesOf(source.slice(start, end)),
    before: gapOf(source.slice(0, start)),
    after: gapOf(source.slice(end)),
  };
}

function gapOf(blanks: string): Gap {
  if (blanks === '') return 'none';
  if (blanks.includes('\t')) return 'tab';
  return blanks.length === 1 ? 'blank' : 'wide';
}

/** Rows are three or more of one mark; shorter ones mean themselves. */
const leastRow = 3;

function piecesOf(source: string): readonly TemplatePiece[] {
  const pieces: TemplatePiece[] = [];
  let text = '';
  const flush = () => {
    if (text !== '') pieces.push({ kind: 'text', text });
    text = '';
  };
  for (let at = 0; at < source.length; ) {
    const character = source[at] ?? '';
    const end = isBlank(character) ? afterBlanks(source, at) : afterRow(source, at);
    if (isBlank(character)) {
      flush();
      pieces.push({ kind: 'gap', gap: gapOf(source.slice(at, end)) });
    } else if (end - at >= leastRow && !isLetterOrDigit(character)) {
      flush();
      pieces.push({ kind: 'row', character });
    } else text += source.slice(at, end);
    at = end;
  }
  flush();
  return pieces;
}

/** Where the row of equal characters that begins at `at` ends. */
export function afterRow(text: string, at: number, to = text.length): number {
  let end = at + 1;
  while (end < to && text[end] === text[at]) end += 1;
  return end;
}

/** Where a row ends whose characters may have a blank between them: `. . . .`. */
export function afterLooseRow(text: string, at: number, to = text.length): number {
  let end = at + 1;
  while (end < to) {
    if (text[end] === text[at]) end += 1;
    else if (isBlank(text[end]) && end + 1 < to && text[end + 1] === text[at]) end += 2;
    else break;
  }
  return end;
}
