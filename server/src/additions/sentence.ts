import type { AdditionProblem } from './read-addition';

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
