/** A name apart from the bracket that ends it: `corner[dHz]`, `gain [1/1000]`, `idle (%)`. */
export interface EndBracket {
  readonly before: string;
  readonly inner: string;
}

const pattern = /^(.*?)[\s_]?(?:\[([^()[\]]{1,20})\]|\(([^()[\]]{1,20})\))$/;

/** The bracket that ends a name, with no other in it; null where none does. */
export function endBracketOf(name: string): EndBracket | null {
  const [, before, square, round] = pattern.exec(name.trimEnd()) ?? [];
  return before === undefined ? null : { before, inner: (square ?? round ?? '').trim() };
}
