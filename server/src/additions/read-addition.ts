import type { Node } from 'jsonc-parser';
import type { Fault } from '../catalog/faults/fault';
import { type Addition, addition } from '../catalog/model/addition';
import type { Span } from '../language/ast';
import { ownFaults } from './addition-faults';
import { keySpanOf, readJson, spanOf } from './json-text';
import { shapeFault } from './shape-fault';

/** Something wrong in a file of a workspace's additions. */
export interface AdditionProblem extends Span {
  readonly id: AdditionProblemId;
  /** One sentence without its end: what is wrong and what was expected. */
  readonly message: string;
}

export type AdditionProblemId =
  | 'addition/unreadable'
  | 'addition/not-json'
  | 'addition/shape'
  | 'addition/value'
  | 'addition/name'
  | 'addition/reference'
  | 'addition/never';

/** A file that could be read, with its places; or the one reason why it could not. */
export type ReadAddition =
  | { readonly kind: 'read'; readonly addition: Addition; readonly tree: Node }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

/** A text longer than this was hardly written by hand, and would be read at every keystroke. */
const longest = 1_000_000;

/** Reads one file by itself: its JSON, its shape, its quantities. */
export function readAddition(text: string): ReadAddition {
  if (text.length > longest) return broken('addition/not-json', 'it is too long', { start: 0, end: 0 });
  const json = readJson(text);
  if (json.kind === 'broken') return broken('addition/not-json', json.message, json.at);
  const parsed = addition.safeParse(json.value);
  if (!parsed.success) {
    const { at, message, key } = shapeFault(parsed.error);
    const span = key === undefined ? spanOf(json.tree, at) : keySpanOf(json.tree, at, key);
    return broken('addition/shape', message, span);
  }
  const problems = problemsAt('addition/value', ownFaults(parsed.data), json.tree);
  return problems.length > 0
    ? { kind: 'broken', problems }
    : { kind: 'read', addition: parsed.data, tree: json.tree };
}

export function problemsAt(
  id: AdditionProblemId,
  faults: readonly Fault[],
  tree: Node,
): readonly AdditionProblem[] {
  return faults.map(({ at, message }) => ({ id, message, ...spanOf(tree, at) }));
}

function broken(id: AdditionProblemId, message: string, { start, end }: Span): ReadAddition {
  return { kind: 'broken', problems: [{ id, message, start, end }] };
}
