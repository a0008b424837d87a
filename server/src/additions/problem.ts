import type { Node } from 'jsonc-parser';
import type { Fault } from '../catalog/faults/fault';
import type { Span } from '../language/ast';
import { spanOf } from './json-text';

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

/** What a file holds: parts of all kinds, or one board profile. */
export type FileKind = 'addition' | 'board';

/** Where the parts of a file stand in its text. */
export interface AdditionTree {
  readonly root: Node;
  readonly kind: FileKind;
}

/** Faults of what a file adds, at their places in its text. */
export function problemsAt(
  id: AdditionProblemId,
  faults: readonly Fault[],
  { root, kind }: AdditionTree,
): readonly AdditionProblem[] {
  // The file of a board is that board: what is told of `boards[0]` stands at its top.
  const inFile = (at: Fault['at']) => (kind === 'board' && at[0] === 'boards' ? at.slice(2) : at);
  return faults.map(({ at, message }) => ({ id, message, ...spanOf(root, inFile(at)) }));
}

/** What is wrong with a file of additions. */
export function messageFor({ message }: AdditionProblem): string {
  return `${message.slice(0, 1).toUpperCase()}${message.slice(1)}.`;
}

/** What to do about it, and what holds until then. */
export function adviceFor({ id }: AdditionProblem): string {
  if (id === 'addition/unreadable') return 'Nothing that it adds is in use until it can be read.';
  if (id === 'addition/never') return 'Mend its conditions, or leave the rule out.';
  return 'Mend it: nothing of this file is in use as it stands; what it said when it was last fine stays in use.';
}
