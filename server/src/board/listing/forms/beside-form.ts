import { closing } from '../text/characters';
import type { Field, Literal, Template } from './template';

/** Something that may stand behind a value: ` [{remark}]`, ` # {remark}`, ` {unit}`, ` default {default}`. */
export interface BesideForm {
  readonly field: Field;
  readonly open: Literal;
  readonly close: Literal;
  /** The bracket that opens it last; a bracket of its kind in it closes itself. */
  readonly bracket: string | null;
}

/** Templates with several fields say several things: one of each. */
export function besideOf(template: Template): BesideForm | null {
  const [field] = template.fields;
  const [open, close] = template.literals;
  if (field === undefined || open === undefined || close === undefined) return null;
  const last = open.pieces.at(-1);
  const bracket = last?.kind === 'text' ? (last.text.at(-1) ?? '') : '';
  const isPaired = closing.has(bracket) && closing.get(bracket) === firstOf(close);
  return { field, open, close, bracket: isPaired ? bracket : null };
}

function firstOf({ pieces }: Literal): string | undefined {
  const [first] = pieces;
  return first?.kind === 'text' ? first.text[0] : undefined;
}
