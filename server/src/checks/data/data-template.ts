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

/**
 * Puts values into a template. A slot without a value keeps its braces, so that the gap is seen, unless it names a word:
 * that is said as a script writes it.
 */
export function filledTemplate(template: string, values: Readonly<Record<string, string>>): string {
  return template.replace(slots, (whole, name: string) =>
    Object.hasOwn(values, name) ? (values[name] ?? whole) : (wordSlot.exec(name)?.[2] ?? whole),
  );
}

/** `signal-loss.action is motors-off`: a word of a parameter; `find.on has switch`: one of a list. */
export const wordSlot = /^(\S+) (?:is|has) (\S+)$/;

/** `where figure.roll-phase-margin`: the place at which a figure holds. */
export const whereSlot = /^where figure\.(\S+)$/;

/** `settling figure.full-sag`: settings that would tell what a figure had to assume; empty where there is none. */
export const settlingSlot = /^settling figure\.(\S+)$/;

/** `2 * gyro.rate in Hz`, `motor.poles + 1 in count`; null for a slot of another kind. */
export function calculatedSlot(slot: string): { readonly expression: string; readonly unit: string } | null {
  const [, expression, unit = ''] = /^(.+) in (\S+)$/.exec(slot) ?? [];
  return expression === undefined ? null : { expression, unit: unit === 'count' ? '' : unit };
}

/** What a slot of a data rule's sentence shows: a parameter, a figure, where that holds, what would settle it, or an expression in a unit. */
export function slotText(slot: string, view: CraftView, scope: Scope): string | Amount {
  const [, , word] = wordSlot.exec(slot) ?? [];
  if (word !== undefined) return word;
  const calculated = calculatedSlot(slot);
  if (calculated !== null) {
    const { value } = evaluate(readExpressionText(calculated.expression), scope);
    return value === null ? 'unknown' : new Amount(value.value, calculated.unit);
  }
  const [, placed] = whereSlot.exec(slot) ?? [];
  if (placed !== undefined) return figureOf(view, placed)?.place ?? 'somewhere';
  const [, unsure] = settlingSlot.exec(slot) ?? [];
  if (unsure !== undefined) return figureOf(view, unsure)?.settledBy?.join(' or ') ?? '';
  if (!slot.startsWith('figure.')) return view.shown(slot);
  const figure = figureOf(view, slot.slice(7));
  return figure === null ? 'unknown' : new Amount(toBase(figure.likely, unitOf(figure.unit)), figure.unit);
}
