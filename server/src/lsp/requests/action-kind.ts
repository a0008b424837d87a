/** Kinds are paths: whoever asks for `source` wants `source.fixAll` too. */
export function isWanted(kind: string, only: readonly string[]): boolean {
  return only.some((wanted) => wanted === kind || kind.startsWith(`${wanted}.`));
}
