import { evaluate } from '../../craft/evaluate';
import { isExpression } from '../../craft/interpret-number';
import type { Scope } from '../../craft/scope';
import type { CraftView } from '../../craft/view';
import type { ExpressionNode } from '../../language/ast';
import { parseLine } from '../../language/parser';
import { referencesIn } from '../../language/value-nodes';
import { sameDimension } from '../../units/dimension';
import { nearlyEqual } from '../../units/nearly-equal';

/** A condition of a data rule, read once. */
export type Condition =
  | {
      readonly kind: 'compare';
      readonly left: ExpressionNode;
      readonly sign: ComparisonSign;
      readonly right: ExpressionNode;
      /** What both sides name, in order. */
      readonly names: readonly string[];
    }
  | { readonly kind: 'word'; readonly path: string; readonly word: string; readonly isWanted: boolean }
  | { readonly kind: 'has'; readonly path: string; readonly word: string }
  | { readonly kind: 'set'; readonly path: string; readonly isWanted: boolean };

type ComparisonSign = '<' | '<=' | '>' | '>=' | '=' | '!=';

/** Reads an expression in catalogue data; throws when it isn't one. */
export function readExpressionText(text: string): ExpressionNode {
  const statement = parseLine(`x = ${text}`);
  const isFine = statement.kind === 'setting' && statement.problems.length === 0;
  if (!isFine || statement.value === null || !isExpression(statement.value)) {
    throw new Error(`"${text}" is not an expression`);
  }
  return statement.value;
}

/** Reads one condition; throws with the reason when it can't be understood. */
export function readCondition(text: string): Condition {
  const state = /^(\S+) is (set|missing)$/.exec(text);
  if (state !== null) return { kind: 'set', path: state[1] ?? '', isWanted: state[2] === 'set' };
  const word = /^(\S+) is (not )?(\S+)$/.exec(text);
  if (word !== null)
    return { kind: 'word', path: word[1] ?? '', word: word[3] ?? '', isWanted: word[2] === undefined };
  const has = /^(\S+) has (\S+)$/.exec(text);
  if (has !== null) return { kind: 'has', path: has[1] ?? '', word: has[2] ?? '' };
  const compare = / (<=|>=|!=|<|>|=) /.exec(text);
  if (compare === null)
    throw new Error(`"${text}" is not a condition: a comparison, "is" or "has" was expected`);
  const [signs, sign] = compare;
  const left = readExpressionText(text.slice(0, compare.index));
  const right = readExpressionText(text.slice(compare.index + signs.length));
  const names = [left, right].flatMap((side) => [...referencesIn(side)].map(({ path }) => path.text));
  return { kind: 'compare', left, sign: sign as ComparisonSign, right, names };
}

/** The settings and figures that a condition looks at. */
export function readBy(condition: Condition): readonly string[] {
  return condition.kind === 'compare' ? condition.names : [condition.path];
}

/** Whether a condition holds. What is missing or unknown makes it false. */
export function holds(condition: Condition, view: CraftView, scope: Scope): boolean {
  switch (condition.kind) {
    case 'set':
      return condition.isWanted ? view.isSet(condition.path) : view.isMissing(condition.path);
    case 'has':
      return view.words(condition.path)?.includes(condition.word) ?? false;
    case 'word': {
      const value = wordOf(view, condition.path);
      return value !== null && (value === condition.word) === condition.isWanted;
    }
    case 'compare':
      return compares(condition, scope);
  }
}

function isKnown(name: string, scope: Scope): boolean {
  return (name.includes('.') ? scope.parameter(name) : scope.constant(name)).kind === 'value';
}

function wordOf(view: CraftView, path: string): string | null {
  const value = view.value(path);
  if (value?.kind === 'flag') return value.value ? 'on' : 'off';
  return value?.kind === 'word' ? value.value : null;
}

function compares(condition: Extract<Condition, { kind: 'compare' }>, scope: Scope): boolean {
  const { left, sign, right, names } = condition;
  // Most of what rules name is not set anywhere: asking first is much quicker than an evaluation that fails.
  if (!names.every((name) => isKnown(name, scope))) return false;
  const one = evaluate(left, scope).value;
  const other = evaluate(right, scope).value;
  if (one === null || other === null || !sameDimension(one.dimension, other.dimension)) return false;
  const difference = one.value - other.value;
  const isSame = nearlyEqual(one.value, other.value);
  switch (sign) {
    case '=':
      return isSame;
    case '!=':
      return !isSame;
    case '<':
      return !isSame && difference < 0;
    case '<=':
      return isSame || difference < 0;
    case '>':
      return !isSame && difference > 0;
    case '>=':
      return isSame || difference > 0;
  }
}
