import type { Forms } from '../catalog/model/board-forms';
import type { Profile } from './profile/profile';
import { compileTemplate, type Field, type Template } from './template';

/** How a board writes one setting in a line, where all its settings are written alike. */
export interface LineForm {
  readonly line: Template;
  readonly heading: Template | null;
  readonly comment: string;
  /** What ends a value where more stands behind it. */
  readonly remarks: readonly string[];
  readonly opening: readonly Template[];
  readonly closing: readonly Template[];
}

const known = new WeakMap<Forms, LineForm | null>();

/** Null for a board that writes its settings in another way. */
export function lineFormOf({ text: { forms } }: Pick<Profile, 'text'>): LineForm | null {
  const before = known.get(forms);
  if (before !== undefined) return before;
  const made = lineForm(forms);
  known.set(forms, made);
  return made;
}

function lineForm({ lines, headings, comments, beside, opening, closing }: Forms): LineForm | null {
  const [first] = lines;
  const line = first === undefined ? null : template(first.form, ['name', 'value'], ['group', 'index']);
  if (line === null) return null;
  return {
    line,
    heading: headings[0] === undefined ? null : template(headings[0], ['group']),
    comment: comments[0] ?? '#',
    remarks: beside.flatMap((form) => form.slice(0, form.indexOf('{')).trimEnd() || []),
    opening: opening.flatMap((one) => template(one, [], ['board']) ?? []),
    closing: closing.flatMap((one) => template(one, [], ['board', 'count']) ?? []),
  };
}

function template(source: string, needed: readonly Field[], more: readonly Field[] = []): Template | null {
  const made = compileTemplate(source, needed, [...needed, ...more]);
  return made.kind === 'template' ? made.template : null;
}
