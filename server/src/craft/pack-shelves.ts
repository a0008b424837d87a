/** What is kept by name, of one kind: what holds with every pack in view, and the rest by pack. */
export interface PackShelves<T> {
  readonly shared: Map<string, T>;
  readonly byPack: Map<string | null, Map<string, T>>;
}

/** The shelves of a kind. */
export function shelvesOf<T>(kinds: Map<string, PackShelves<T>>, kind: string): PackShelves<T> {
  const known = kinds.get(kind);
  if (known !== undefined) return known;
  const made: PackShelves<T> = { shared: new Map(), byPack: new Map() };
  kinds.set(kind, made);
  return made;
}

/** The shelf of a pack. */
export function shelfWith<T>({ byPack }: PackShelves<T>, pack: string | null): Map<string, T> {
  const known = byPack.get(pack);
  if (known !== undefined) return known;
  const made = new Map<string, T>();
  byPack.set(pack, made);
  return made;
}
