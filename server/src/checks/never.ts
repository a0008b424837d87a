import type { Catalog } from '../catalog/catalog';
import type { DataCheck } from '../catalog/model/check';
import { type Condition, readCondition } from './condition';
import { asMember } from './members';
import { neverHold } from './reach';

type Of<K extends Condition['kind']> = Extract<Condition, { kind: K }>;

/** Whether no script at all can make a rule's conditions hold together. The rule must be free of faults. */
export function neverTriggers(check: DataCheck, catalog: Catalog): boolean {
  const conditions = check.when.map((text) => readCondition(asMember(text, check, catalog)));
  const of = <K extends Condition['kind']>(kind: K) =>
    conditions.filter((one): one is Of<K> => one.kind === kind);
  const missing = new Set(of('set').flatMap(({ path, isWanted }) => (isWanted ? [] : [path])));
  return (
    of('set').some(({ path, isWanted }) => isWanted && missing.has(path)) ||
    wordsClash(of('word')) ||
    [...of('word'), ...of('has')].some(({ path }) => isUnknown(path, missing, catalog)) ||
    neverHold(of('compare'), catalog)
  );
}

/** One parameter that is to be two words, or a word and not that word. */
function wordsClash(conditions: readonly Of<'word'>[]): boolean {
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
