import { evaluate } from '../../craft/evaluate';
import type { Scope } from '../../craft/scope';
import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { Amount } from '../../units/distinct-texts';
import { toBase, unitOf } from '../../units/unit';
import { readExpressionText } from './condition';

const slots = /\{([^{}]+)\}/g;

/** The names in a template's braces, each once. */
export function slotsIn(template: string): readonly string[] {
  return [...new Set([...template.matchAll(slots)].map((match) => match[1] ?? ''))];
}

/** Puts values into a template. A slot without a value keeps its braces, so that the gap is seen. */
export function filledTemplate(template: string, values: Readonly<Record<string, string>>): string {
  return template.replace(slots, (whole, name: string) =>
    Object.hasOwn(values, name) ? (values[name] ?? whole) : whole,
  );
}

/** `where figure.roll-phase-margin`: the place at which a figure holds. */
export const whereSlot = /^where figure\.(\S+)$/;

/** What a slot of a data rule's sentence shows: a parameter, a figure, where that holds, or an expression in a unit. */
export function slotText(slot: string, view: CraftView, scope: Scope): string | Amount {
  const calculated = /^(.+) in (\S+)$/.exec(slot);
  if (calculated !== null) {
    const [, expression = '', unit = ''] = calculated;
    const { value } = evaluate(readExpressionText(expression), scope);
    return value === null ? 'unknown' : new Amount(value.value, unit);
  }
  const [, placed] = whereSlot.exec(slot) ?? [];
  if (placed !== undefined) return figureOf(view, placed)?.place ?? 'somewhere';
  if (!slot.startsWith('figure.')) return view.shown(slot);
  const figure = figureOf(view, slot.slice(7));
  return figure === null ? 'unknown' : new Amount(toBase(figure.likely, unitOf(figure.unit)), figure.unit);
}
