import type { Fault } from '../catalog/faults/fault';
import { spanOf } from './json-text';
import type { AdditionProblem, AdditionProblemId, AdditionTree } from './read-addition';

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
