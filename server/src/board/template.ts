/** The fields that a template may hold. */
export type Field = 'group' | 'name' | 'value' | 'index' | 'board' | 'count';

/** A stretch of a line, in UTF-16 units. */
export interface FieldText {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Something between two fields: what must stand there, and whether blanks must stand around it. */
interface Literal {
  readonly core: string;
  readonly before: boolean;
  readonly after: boolean;
}

/**
 * A pattern for one line, used both ways: literals and fields in turn, literals first and last, perhaps empty.
 * Blanks in a literal stand for one blank or more when a line is read, and for themselves when it is written.
 */
export interface Template {
  readonly source: string;
  readonly fields: readonly Field[];
  readonly literals: readonly Literal[];
}

export type TemplateResult =
  | { readonly kind: 'template'; readonly template: Template }
  | { readonly kind: 'fault'; readonly message: string };

const known: ReadonlySet<string> = new Set<Field>(['group', 'name', 'value', 'index', 'board', 'count']);

/** Reads a template; `needed`: fields that must be in it, `allowed`: those that may. */
export function compileTemplate(
  source: string,
  needed: readonly Field[],
  allowed: readonly Field[] = needed,
): TemplateResult {
  const parts = source.split(/\{([a-z]*)\}/);
  const fields = parts.filter((_, index) => index % 2 === 1);
  const between = parts.filter((_, index) => index % 2 === 0);
  const fault = (message: string): TemplateResult => ({ kind: 'fault', message });
  const unknown = fields.find((field) => !known.has(field) || !allowed.includes(field as Field));
  if (unknown !== undefined)
    return fault(`{${unknown}} is no field of this line: ${allowed.map((one) => `{${one}}`).join(', ')}`);
  const missing = needed.find((field) => !fields.includes(field));
  if (missing !== undefined) return fault(`the field {${missing}} is missing`);
  const twice = fields.find((field, index) => fields.indexOf(field) !== index);
  if (twice !== undefined) return fault(`{${twice}} stands there twice`);
  if (between.some((text) => /[{}]/.test(text))) return fault('a brace that belongs to no field');
  const touching = between.slice(1, -1).includes('');
  if (touching) return fault('two fields with nothing between them cannot be told apart');
  return {
    kind: 'template',
    template: { source, fields: fields as Field[], literals: between.map(literalOf) },
  };
}

function literalOf(text: string, index: number, all: readonly string[]): Literal {
  const core = text.trim();
  const isFirst = index === 0;
  const isLast = index === all.length - 1;
  // Blanks at either end of the line never matter.
  return {
    core,
    before: !isFirst && /^\s/.test(text),
    after: !isLast && /\s$/.test(text),
  };
}

/** The line with its fields filled in. */
export function fill(template: Template, values: Readonly<Partial<Record<Field, string>>>): string {
  return template.source.replace(/\{([a-z]+)\}/g, (_, field: Field) => values[field] ?? '');
}

/**
 * The fields of a line; null when it is not of this form. Every field before the value ends at the first place
 * where what follows it can stand, and every one behind it begins at the last: one pass over the line.
 */
export function match(template: Template, line: string): ReadonlyMap<Field, FieldText> | null {
  const { fields, literals } = template;
  const found = new Map<Field, FieldText>();
  const first = literals[0];
  const last = literals.at(-1);
  if (first === undefined || last === undefined) return null;
  let [start, end] = trimmed(line, 0, line.length);
  if (!line.startsWith(first.core, start)) return null;
  start += first.core.length;
  if (first.after && first.core !== '' && !isBlank(line[start])) return null;
  if (last.core !== '') {
    if (end - last.core.length < start || !line.endsWith(last.core, end)) return null;
    end -= last.core.length;
    if (last.before && !isBlank(line[end - 1])) return null;
  }
  const value = fields.indexOf('value');
  const turn = value < 0 ? fields.length - 1 : value;
  for (let index = 0; index < turn; index += 1) {
    const at = firstPlace(line, literals[index + 1], start, end);
    if (at === null) return null;
    put(found, fields[index], line, start, at.start);
    start = at.end;
  }
  for (let index = fields.length - 1; index > turn; index -= 1) {
    const at = lastPlace(line, literals[index], start, end);
    if (at === null) return null;
    put(found, fields[index], line, at.end, end);
    end = at.start;
  }
  put(found, fields[turn], line, start, end);
  return found;
}

function put(
  found: Map<Field, FieldText>,
  field: Field | undefined,
  line: string,
  from: number,
  to: number,
): void {
  if (field === undefined) return;
  const [start, end] = trimmed(line, from, to);
  found.set(field, { start, end, text: line.slice(start, end) });
}

interface At {
  readonly start: number;
  readonly end: number;
}

/** The first place from `from` on where a literal can stand, after at least one character of the field before it. */
function firstPlace(line: string, literal: Literal | undefined, from: number, to: number): At | null {
  if (literal === undefined) return null;
  const [start] = trimmed(line, from, to);
  if (literal.core === '') return blanksAfter(line, start, to);
  let at = line.indexOf(literal.core, start + 1);
  while (at >= 0 && at + literal.core.length <= to) {
    if (stands(line, literal, at)) return { start: at, end: at + literal.core.length };
    at = line.indexOf(literal.core, at + 1);
  }
  return null;
}

/** The last place before `to` where a literal can stand. */
function lastPlace(line: string, literal: Literal | undefined, from: number, to: number): At | null {
  if (literal === undefined) return null;
  if (literal.core === '') {
    let end = trimmed(line, from, to)[1];
    while (end > from && !isBlank(line[end - 1])) end -= 1;
    return end > from ? { start: end, end } : null;
  }
  let at = line.lastIndexOf(literal.core, to - literal.core.length);
  while (at >= from) {
    if (stands(line, literal, at)) return { start: at, end: at + literal.core.length };
    if (at === 0) break;
    at = line.lastIndexOf(literal.core, at - 1);
  }
  return null;
}

function stands(line: string, { core, before, after }: Literal, at: number): boolean {
  const end = at + core.length;
  return (!before || isBlank(line[at - 1])) && (!after || end === line.length || isBlank(line[end]));
}

function blanksAfter(line: string, from: number, to: number): At | null {
  let start = from;
  while (start < to && !isBlank(line[start])) start += 1;
  return start > from && start < to ? { start, end: start } : null;
}

function trimmed(line: string, from: number, to: number): [start: number, end: number] {
  let [start, end] = [from, to];
  while (start < end && isBlank(line[start])) start += 1;
  while (end > start && isBlank(line[end - 1])) end -= 1;
  return [start, end];
}

function isBlank(character: string | undefined): boolean {
  return character === ' ' || character === '\t';
}
