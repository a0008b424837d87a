import type { Forms } from '../../../catalog/model/board-forms';
import type { DecimalMark } from '../number-look';
import { type Beside, besideOf } from './tail';
import { type Template, templateOf } from './template';

export interface LineForm {
  readonly template: Template;
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
  const template = templateOf(form.form);
  return {
    template,
    names: form.names ?? 'word',
    between: form.between ?? null,
    negation: template.fields.includes('value') ? null : (form.negation ?? ''),
  };
}
