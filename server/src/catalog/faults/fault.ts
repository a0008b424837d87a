/** Something wrong in a piece of catalogue data: where in it, and what, in words that end no sentence. */
export interface Fault {
  /** Keys and indices on the way into the piece; empty for the whole of it. */
  readonly at: readonly (string | number)[];
  readonly message: string;
}

/** Faults of a part, with their way from the whole. */
export function faultsWithin(at: Fault['at'], faults: readonly Fault[]): readonly Fault[] {
  return faults.map((fault) => ({ ...fault, at: [...at, ...fault.at] }));
}

/** `range[1]`, for a line about a file. */
export function placeText({ at }: Fault): string {
  return at.map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`)).join('');
}

/** What stands more than once in a list. */
export function repeated(list: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  return [...new Set(list.filter((text) => seen.has(text) || !seen.add(text)))];
}
