/** What belongs to one question of the pilot; `title` is null where a list has no parts. */
export interface Part<T> {
  readonly title: string | null;
  readonly of: readonly T[];
}

/** A list in its parts, in its order: those of one part stand together. */
export function inParts<T extends { readonly part?: string | undefined }>(
  list: readonly T[],
): readonly Part<T>[] {
  const titles = [...new Set(list.map(({ part }) => part ?? null))];
  return titles.map((title) => ({ title, of: list.filter(({ part }) => (part ?? null) === title) }));
}
