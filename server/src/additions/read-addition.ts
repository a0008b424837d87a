import type { Node } from 'jsonc-parser';
import type * as z from 'zod/mini';
import type { Fault } from '../catalog/faults/fault';
import { type Addition, addition } from '../catalog/model/addition';
import type { Span } from '../language/ast';
import { ownFaults } from './addition-faults';
import { keySpanOf, readJsonTree, spanOf } from './json-text';
import type { AdditionProblem, AdditionProblemId } from './problem';
import { shapeFault } from './shape-fault';

/** A file that could be read, with its places; or the one reason why it could not. */
export type ReadAddition =
  | { readonly kind: 'read'; readonly addition: Addition; readonly tree: AdditionTree }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

/** Where the parts of a file stand in its text. */
export interface AdditionTree {
  readonly root: Node;
}

/** A text longer than this was hardly written by hand, and would be read at every keystroke. */
const longest = 1_000_000;

/** Reads one file by itself: its JSON, its shape, its quantities. */
export function readAddition(text: string): ReadAddition {
  const shaped = readShape(text, addition, { longest, mayHaveComments: false });
  if (shaped.kind === 'broken') return shaped;
  const { data, tree } = shaped;
  const problems = problemsAt('addition/value', ownFaults(data), tree);
  return problems.length > 0 ? { kind: 'broken', problems } : { kind: 'read', addition: data, tree };
}

/** A text as a model has it, or where it stops being so. */
export type Shaped<T> =
  | { readonly kind: 'shaped'; readonly data: T; readonly tree: AdditionTree }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

export interface ShapeOptions {
  /** In characters. */
  readonly longest: number;
  readonly mayHaveComments: boolean;
}

/** Reads the JSON of a file and holds it to its model. */
export function readShape<T>(
  text: string,
  model: z.ZodMiniType<T>,
  { longest: most, mayHaveComments }: ShapeOptions,
): Shaped<T> {
  if (text.length > most) return broken('addition/not-json', 'it is too long', { start: 0, end: 0 });
  const json = readJsonTree(text, mayHaveComments);
  if (json.kind === 'broken') return broken('addition/not-json', json.message, json.at);
  const { data, error } = model.safeParse(json.value);
  if (error === undefined) return { kind: 'shaped', data, tree: { root: json.tree } };
  const { at, message, key } = shapeFault(error);
  const span = key === undefined ? spanOf(json.tree, at) : keySpanOf(json.tree, at, key);
  return broken('addition/shape', message, span);
}

function broken<T>(
  id: AdditionProblemId,
  message: string,
  { start, end }: Span,
): Shaped<T> & { kind: 'broken' } {
  return { kind: 'broken', problems: [{ id, message, start, end }] };
}

/** Faults of what a file adds, at their places in its text. */
export function problemsAt(
  id: AdditionProblemId,
  faults: readonly Fault[],
  { root }: AdditionTree,
): readonly AdditionProblem[] {
  return faults.map(({ at, message }) => ({ id, message, ...spanOf(root, at) }));
}
