import type { AdditionProblem } from '../additions/problem';
import { fileName } from '../craft/include-path';

/** The files of a workspace's `boards/` folders, known by their names alone. */
export interface ListedBoards {
  /** The file of each board. */
  readonly files: ReadonlyMap<string, string>;
  /** By file: its name is none, or is taken. */
  readonly problems: ReadonlyMap<string, AdditionProblem>;
}

/**
 * Each file is the profile of the board that it is named after. A name that is taken stays with whom it was. `beside`:
 * files that count only where no other has their name.
 */
export function listedBoards(
  files: readonly string[],
  beside: readonly string[],
  builtIn: ReadonlySet<string>,
): ListedBoards {
  const named = new Map<string, string>();
  const problems = new Map<string, AdditionProblem>();
  for (const file of [...files].sort()) {
    const name = boardOf(file);
    const fault = faultOf(name, named.get(name), builtIn);
    if (fault === null) named.set(name, file);
    else problems.set(file, { id: 'addition/name', message: fault, start: 0, end: 0 });
  }
  for (const file of [...beside].sort()) {
    const name = boardOf(file);
    if (!named.has(name) && faultOf(name, undefined, builtIn) === null) named.set(name, file);
  }
  return { files: named, problems };
}

/** `dipper` of `boards/dipper.json`. */
export function boardOf(file: string): string {
  return fileName(file).replace(/\.jsonc?$/, '');
}

function faultOf(name: string, other: string | undefined, builtIn: ReadonlySet<string>): string | null {
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name))
    return `a board is called as its file is, and "${name}" is no name: small letters, with hyphens between words`;
  if (builtIn.has(name)) return `the board ${name} is built in: give yours another name`;
  return other === undefined
    ? null
    : `the board ${name} is in boards/${fileName(other)} already: give yours another name`;
}
