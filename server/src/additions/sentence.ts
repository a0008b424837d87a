import type { AdditionProblem } from './read-addition';

/** What is wrong with a file of additions, and what follows from it. */
export function sentenceOf({ id, message }: AdditionProblem): string {
  const told = `${message.slice(0, 1).toUpperCase()}${message.slice(1)}.`;
  if (id === 'addition/never') return told;
  return `${told}\nNothing of this file is in use as it stands; what it said when it was last fine stays in use.`;
}
