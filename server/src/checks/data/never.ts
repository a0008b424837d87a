import type { Catalog } from '../../catalog/catalog';
import type { DataCheck } from '../../catalog/model/check';
import type { ExpressionNode } from '../../language/ast';
import { type Condition, readCondition } from './condition';
import { asMember } from './members';
import { neverHold } from './reach';

type ConditionOf<K extends Condition['kind']> = Extract<Condition, { kind: K }>;

/** Whether no script at all can make a rule's conditions hold together. The rule must be free of faults. */
export function neverTriggers(check: DataCheck, catalog: Catalog): boolean {
  const conditions = check.when.map((text) => readCondition(asMember(text, check, catalog)));
  const of = <K extends Condition['kind']>(kind: K) =>
    conditions.filter((one): one is ConditionOf<K> => one.kind === kind);
  const missing = new Set(of('set').flatMap(({ path, isWanted }) => (isWanted ? [] : [path])));
  return (
    of('set').some(({ path, isWanted }) => isWanted && missing.has(path)) ||
    wordsClash(of('word')) ||
    [...of('word'), ...of('has')].some(({ path }) => isUnknown(path, missing, catalog)) ||
    comparisonsClash(of('compare')) ||
    neverHold(of('compare'), catalog)
  );
}

type Order = '<' | '=' | '>';

/** What one side may be to the other where a comparison holds. */
const orders: Readonly<Record<ConditionOf<'compare'>['sign'], readonly Order[]>> = {
  '<': ['<'],
  '<=': ['<', '='],
  '=': ['='],
  '>=': ['>', '='],
  '>': ['>'],
  '!=': ['<', '>'],
};
const turned: Readonly<Record<Order, Order>> = { '<': '>', '=': '=', '>': '<' };

/** The same two things compared in ways that leave nothing, or one thing with itself: `a < b` and `a >= b`, `a > a`. */
function comparisonsClash(comparisons: readonly ConditionOf<'compare'>[]): boolean {
  const left = new Map<string, readonly Order[]>();
  for (const { left: one, sign, right: other } of comparisons) {
    const [first, second] = [keyOf(one), keyOf(other)];
    const isTurned = first > second;
    const key = isTurned ? `${second} ${first}` : `${first} ${second}`;
    const said = isTurned ? orders[sign].map((order) => turned[order]) : orders[sign];
    const known = left.get(key) ?? (first === second ? ['='] : ['<', '=', '>']);
    left.set(
      key,
      known.filter((order) => said.includes(order)),
    );
  }
  return [...left.values()].some((orders) => orders.length === 0);
}

/** What an expression says, wherever it stands in its text. */
function keyOf(node: ExpressionNode): string {
  switch (node.kind) {
    case 'number':
      return `${node.value} ${node.unit?.text ?? ''}`;
    case 'reference':
      return node.path.text;
    case 'negative':
      return `(-${keyOf(node.of)})`;
    case 'sum':
      return `(${node.terms.map(({ sign, node: term }) => `${sign}${keyOf(term)}`).join('')})`;
    case 'product':
      return `(${node.factors.map(({ sign, node: factor }) => `${sign}${keyOf(factor)}`).join('')})`;
    case 'call':
      return `${node.name.text}(${node.args.map(keyOf).join(',')})`;
  }
}

/** One parameter that is to be two words, or a word and not that word. */
function wordsClash(conditions: readonly ConditionOf<'word'>[]): boolean {
  return conditions.some(
    (one) =>
      one.isWanted &&
      conditions.some((other) => other.path === one.path && (other.word === one.word) !== other.isWanted),
  );
}

/** What is missing and has no default is no word. */
function isUnknown(path: string, missing: ReadonlySet<string>, catalog: Catalog): boolean {
  return missing.has(path) && (catalog.parameter(path)?.parameter.default ?? null) === null;
}
