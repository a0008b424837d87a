/** What `server/build/compact.ts` writes. */
interface Compact {
  readonly rest: unknown;
  /** By the names that they are under, in their order. */
  readonly texts: Readonly<Record<string, readonly string[]>>;
}

/** The JSON that was made compact for the way here. */
export function restored(compact: string): string {
  const { rest, texts } = JSON.parse(compact) as Compact;
  const next = new Map(Object.entries(texts).map(([name, all]) => [name, all.values()]));
  const filled = (value: unknown, name: string): unknown => {
    if (value === '') return next.get(name)?.next().value;
    if (Array.isArray(value)) return value.map((one: unknown) => filled(one, name));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, filled(one, key)]));
  };
  return JSON.stringify(filled(rest, ''));
}
