import type { Node } from 'jsonc-parser';
import type * as z from 'zod/mini';
import type { Fault } from '../catalog/faults/fault';
import { type Addition, addition, boardFile } from '../catalog/model/addition';
import type { Span } from '../language/ast';
import { ownFaults } from './addition-faults';
import { keySpanOf, readJson, spanOf } from './json-text';
import type { AdditionProblem, AdditionProblemId } from './problem';
import { shapeFault } from './shape-fault';

/** A file that could be read, with its places; or the one reason why it could not. */
export type ReadAddition =
  | { readonly kind: 'read'; readonly addition: Addition; readonly tree: AdditionTree }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

/** What a file holds: parts of all kinds, or one board profile. */
export type FileKind = 'addition' | 'board';

/** Where the parts of a file stand in its text. */
export interface AdditionTree {
  readonly root: Node;
  readonly kind: FileKind;
}

/** A text longer than this was hardly written by hand, and would be read at every keystroke. */
const longest = 1_000_000;

/** Reads one file by itself: its JSON, its shape, its quantities. */
export function readAddition(text: string, kind: FileKind): ReadAddition {
  if (text.length > longest) return broken('addition/not-json', 'it is too long', { start: 0, end: 0 });
  const json = readJson(text, kind === 'board');
  if (json.kind === 'broken') return broken('addition/not-json', json.message, json.at);
  const parsed = kind === 'board' ? parsedBoard(json.value) : parsedAddition(json.value);
  if (parsed.error !== undefined) {
    const { at, message, key } = shapeFault(parsed.error);
    const span = key === undefined ? spanOf(json.tree, at) : keySpanOf(json.tree, at, key);
    return broken('addition/shape', message, span);
  }
  const tree = { root: json.tree, kind };
  const problems = problemsAt('addition/value', ownFaults(parsed.data), tree);
  return problems.length > 0 ? { kind: 'broken', problems } : { kind: 'read', addition: parsed.data, tree };
}

type Parsed =
  | { readonly data: Addition; readonly error?: never }
  | { readonly data?: never; readonly error: z.core.$ZodError };

function parsedAddition(value: unknown): Parsed {
  const { data, error } = addition.safeParse(value);
  return error === undefined ? { data: { ...data, boards: [] } } : { error };
}

function parsedBoard(value: unknown): Parsed {
  const { data, error } = boardFile.safeParse(value);
  if (error !== undefined) return { error };
  const { $schema: _, ...board } = data;
  return { data: { ...addition.parse({}), boards: [board] } };
}

function broken(id: AdditionProblemId, message: string, { start, end }: Span): ReadAddition {
  return { kind: 'broken', problems: [{ id, message, start, end }] };
}

/** Faults of what a file adds, at their places in its text. */
export function problemsAt(
  id: AdditionProblemId,
  faults: readonly Fault[],
  { root, kind }: AdditionTree,
): readonly AdditionProblem[] {
  // The file of a board is that board: what is reported of `boards[0]` stands at its top.
  const inFile = (at: Fault['at']) => (kind === 'board' && at[0] === 'boards' ? at.slice(2) : at);
  return faults.map(({ at, message }) => ({ id, message, ...spanOf(root, inFile(at)) }));
}
