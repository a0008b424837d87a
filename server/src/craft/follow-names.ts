/** Where the names lead that a constant or a setting is calculated from. */
export type NamesBehind =
  | { readonly kind: 'fine' }
  /** It refers back to itself; `through` holds the keys of the way round, itself first and last. */
  | { readonly kind: 'circle'; readonly through: readonly string[] }
  /** So deep that working it out could exhaust the stack; no craft needs that. */
  | { readonly kind: 'too-deep' };

/** What a value is calculated from may itself be calculated, this deep. */
export const deepestNames = 32;

type Referred = (key: string) => readonly string[];

/** Follows what lies behind a key. */
export function followNames(key: string, referredBy: Referred): NamesBehind {
  if (heightOf(key, referredBy, new Map(), deepestNames) > deepestNames) return { kind: 'too-deep' };
  const through = wayRound(key, referredBy);
  return through === null ? { kind: 'fine' } : { kind: 'circle', through };
}

/** How many steps lead down from a key at most; more than any limit once the budget is used up. */
function heightOf(key: string, referredBy: Referred, known: Map<string, number>, budget: number): number {
  const height = known.get(key);
  if (height !== undefined) return height;
  if (budget < 0) return Number.POSITIVE_INFINITY;
  known.set(key, 0); // met again on the way down: a circle, which is told as such
  let highest = 0;
  for (const next of referredBy(key)) {
    highest = Math.max(highest, 1 + heightOf(next, referredBy, known, budget - 1));
    if (highest > deepestNames) return highest;
  }
  known.set(key, highest);
  return highest;
}

/** The shortest way back to a key, if there is one. */
function wayRound(key: string, referredBy: Referred): readonly string[] | null {
  const cameFrom = new Map<string, string>();
  const waiting = [key];
  for (const from of waiting) {
    for (const next of referredBy(from)) {
      if (next === key) return [...wayTo(from, cameFrom), key];
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, from);
      waiting.push(next);
    }
  }
  return null;
}

function wayTo(key: string, cameFrom: ReadonlyMap<string, string>): readonly string[] {
  const way = [key];
  for (let from = cameFrom.get(key); from !== undefined; from = cameFrom.get(from)) way.unshift(from);
  return way;
}
