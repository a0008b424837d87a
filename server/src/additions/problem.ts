import type { Span } from '../language/ast';
import { capitalised } from '../units/capitals';

/** Something wrong in a file of a workspace's additions. */
export interface AdditionProblem extends Span {
  readonly id: AdditionProblemId;
  /** One sentence without its end: what is wrong and what was expected. */
  readonly message: string;
}

/** Of a whole file or folder. */
export function unreadableProblem(message: string): AdditionProblem {
  return { id: 'addition/unreadable', message, start: 0, end: 0 };
}

export type AdditionProblemId =
  | 'addition/unreadable'
  | 'addition/not-json'
  | 'addition/shape'
  | 'addition/value'
  | 'addition/name'
  | 'addition/reference'
  | 'addition/never';

/** What is wrong with a file of additions. */
export function messageFor({ message }: AdditionProblem): string {
  return `${capitalised(message)}.`;
}

/** What to do about it, and what holds until then. */
export function adviceFor({ id }: AdditionProblem): string {
  if (id === 'addition/unreadable') return 'Nothing that it adds is in use until it can be read.';
  if (id === 'addition/never') return 'Mend its conditions, or leave the rule out.';
  return 'Mend it: nothing of this file is in use as it stands; what it said when it was last fine stays in use.';
}
