/** What the system says, for a person. What is not in it is said as the system says it. */
const reasons: ReadonlyMap<unknown, string> = new Map([
  ['ENOENT', 'there is no such file or folder'],
  ['ENOTDIR', 'there is no such file or folder'],
  ['EISDIR', 'it is a folder'],
  ['ELOOP', 'its links lead in a circle'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk is full'],
  ['EFBIG', 'files may not be that long here'],
  ['EROFS', 'nothing can be written to this disk'],
]);

/** Why something could not be done with a file; ends a sentence. */
export function reasonOf(error: unknown, done: 'read' | 'written' = 'read'): string {
  const code = codeOf(error);
  if (code === 'EACCES' || code === 'EPERM') return `it may not be ${done}`;
  return reasons.get(code) ?? (error instanceof Error ? error.message : String(error));
}

/** The name that the system has for an error: `ENOENT`. */
export function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}
