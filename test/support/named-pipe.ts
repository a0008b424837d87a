import { execFileSync } from 'node:child_process';

/** Makes a pipe with a name, to which nobody writes. Node itself can't. */
export function makeNamedPipe(path: string): void {
  execFileSync('sh', ['-c', 'mkfifo "$1"', 'sh', path]);
}
