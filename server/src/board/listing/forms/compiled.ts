import type { Forms } from '../../../catalog/model/board-forms';
import type { DecimalMark } from '../number-look';
import { type Beside, besideOf } from './tail';
import { type Literal, type Template, templateOf } from './template';

export interface LineForm {
  readonly template: Template;
  /** Where a line holds several settings, what parts a group in front of them all from the first; null: none stands there. */
  readonly lead: Literal | null;
  readonly names: 'word' | 'words' | 'before-value';
  readonly between: string | null;
  /** What stands before a name that is off; null: the form has values. */
  readonly negation: string | null;
}

/** Forms made ready for reading. */
export interface CompiledForms {
  readonly forms: Forms;
  readonly lines: readonly LineForm[];
  /** What parts several settings of a line, each once. */
  readonly betweens: readonly string[];
  readonly besides: readonly Beside[];
  readonly headings: readonly Template[];
  readonly openings: readonly Template[];
  readonly closings: readonly Template[];
  readonly mark: DecimalMark;
}

export function compiled(forms: Forms): CompiledForms {
  return {
    forms,
    lines: forms.lines.map(lineFormOf),
    betweens: [...new Set(forms.lines.flatMap(({ between }) => between ?? []))],
    besides: forms.beside.map(templateOf).flatMap((template) => besideOf(template) ?? []),
    headings: forms.headings.map(templateOf),
    openings: forms.opening.map(templateOf),
    closings: forms.closing.map(templateOf),
    mark: forms.decimal,
  };
}

export type LineFormData = Forms['lines'][number];

/** Nothing is known of these forms. */
export const noForms: Forms = {
  container: 'lines',
  lines: [],
  beside: [],
  headings: [],
  closers: [],
  indent: 'none',
  comments: [],
  opening: [],
  closing: [],
  prompts: [],
  decimal: '.',
};

/** Forms of settings lines alone. */
export function formsOf(lines: readonly LineFormData[]): CompiledForms {
  return compiled({ ...noForms, lines: [...lines] });
}

function lineFormOf(form: LineFormData): LineForm {
  const { template, lead } =
    form.between === undefined ? { template: templateOf(form.form), lead: null } : ledBy(form.form);
  return {
    template,
    lead,
    names: form.names ?? 'word',
    between: form.between ?? null,
    negation: template.fields.includes('value') ? null : (form.negation ?? ''),
  };
}

/** `{group}: {name}={value}` is a lead, and a form of what follows it. */
function ledBy(source: string): { readonly template: Template; readonly lead: Literal | null } {
  const template = templateOf(source);
  const start = source.indexOf('{name}');
  const isLed = template.fields[0] === 'group' && template.fields[1] === 'name';
  const lead = isLed ? (template.literals[1] ?? null) : null;
  return { template: lead === null ? template : templateOf(source.slice(start)), lead };
}
