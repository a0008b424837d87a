import type { Forms } from '../../../catalog/model/board-forms';
import type { DecimalMark } from '../number-look';
import { type Remark, readRemark } from '../remark';
import { type BesideForm, besideOf } from './beside-form';
import { besideFields, type Field, isOnlyGap, type Literal, type Template, templateOf } from './template';

/** What stands in front of all settings of a line that holds several. */
export interface Lead {
  /** How many fields: a group, or a group and one of its members. */
  readonly steps: number;
  /** What begins the line. */
  readonly before: Literal;
  /** What parts it from the first setting. */
  readonly after: Literal;
}

export interface LineForm {
  readonly template: Template;
  /** Where a line holds several settings: the group in front of them; null: none stands there. */
  readonly lead: Lead | null;
  /** Whether nothing but blanks parts a name from its value. */
  readonly isLoose: boolean;
  /** What the form itself has room for beside names and values. */
  readonly grouping: readonly Field[];
  readonly saying: readonly Field[];
  readonly names: 'word' | 'words' | 'before-value';
  readonly between: string | null;
  /** What stands before a name that is off; null: the form has values. */
  readonly negation: string | null;
  /** What stands before one that is on, in the place of the negation; empty: nothing. */
  readonly affirmation: string;
}

/** Forms made ready for reading. */
export interface CompiledForms {
  readonly forms: Forms;
  readonly lines: readonly LineForm[];
  /** What parts several settings of a line, each once. */
  readonly betweens: readonly string[];
  readonly besides: readonly BesideForm[];
  /** Whether brackets between a name and its value say something of the value. */
  readonly saysBetween: boolean;
  readonly headings: readonly Template[];
  readonly openings: readonly Template[];
  readonly closings: readonly Template[];
  readonly mark: DecimalMark;
  /** What a remark says: many settings have the same. */
  readonly readRemark: (remark: string) => Remark;
}

export function compiled(forms: Forms): CompiledForms {
  return {
    forms,
    lines: forms.lines.map(lineFormOf),
    betweens: [...new Set(forms.lines.flatMap(({ between }) => between ?? []))],
    besides: forms.beside.map(templateOf).flatMap((template) => besideOf(template) ?? []),
    saysBetween: forms.saysBetween === true,
    headings: forms.headings.map(templateOf),
    openings: forms.opening.map(templateOf),
    closings: forms.closing.map(templateOf),
    mark: forms.decimal,
    readRemark: rememberedSaid(forms.decimal),
  };
}

const mostRemembered = 2000;

function rememberedSaid(mark: DecimalMark): (remark: string) => Remark {
  const remembered = new Map<string, Remark>();
  return (remark) => {
    const said = remembered.get(remark) ?? readRemark(remark, mark);
    if (remembered.size < mostRemembered) remembered.set(remark, said);
    return said;
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

/** Forms of settings lines alone, and of what may stand between names and values. */
export function formsOf(lines: readonly LineFormData[]): CompiledForms {
  return { ...compiled({ ...noForms, lines: [...lines] }), saysBetween: true };
}

function lineFormOf(form: LineFormData): LineForm {
  const { template, lead } =
    form.between === undefined ? { template: templateOf(form.form), lead: null } : ledBy(form.form);
  const isMarked = form.negation !== undefined && template.fields[0] === 'name';
  const affirmation = isMarked ? form.form.slice(0, form.form.indexOf('{name}')) : '';
  return {
    template: affirmation === '' ? template : templateOf(form.form.slice(affirmation.length)),
    lead,
    isLoose: isLoose(template),
    grouping: template.fields.filter((field) => leading.includes(field)),
    saying: template.fields.filter((field) => besideFields.includes(field)),
    names: form.names ?? 'word',
    between: form.between ?? null,
    negation: template.fields.includes('value') ? null : (form.negation ?? ''),
    affirmation,
  };
}

function isLoose({ fields, literals }: Template): boolean {
  const name = fields.indexOf('name');
  const value = fields.indexOf('value');
  const between = literals[Math.max(name, value)];
  return (
    Math.abs(name - value) === 1 && between !== undefined && isOnlyGap(between) && between.before === 'blank'
  );
}

const leading: readonly Field[] = ['group', 'member'];

/** `{group}: {name}={value}` is a lead, and a form of what follows it. */
function ledBy(source: string): { readonly template: Template; readonly lead: Lead | null } {
  const template = templateOf(source);
  const steps = template.fields.indexOf('name');
  const isLed = steps > 0 && template.fields.slice(0, steps).every((field, at) => field === leading[at]);
  const [before, after] = [template.literals[0], template.literals[steps]];
  if (!isLed || before === undefined || after === undefined) return { template, lead: null };
  return { template: templateOf(source.slice(source.indexOf('{name}'))), lead: { steps, before, after } };
}
