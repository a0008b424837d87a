/** Where the names lead that a constant or a setting is calculated from. */
export type NamesBehind =
  | { readonly kind: 'fine' }
  /** It refers back to itself; `through` names the way round, itself first and last. */
  | { readonly kind: 'circle'; readonly through: readonly string[] }
  /** So deep that working it out could exhaust the stack; no craft needs that. */
  | { readonly kind: 'too-deep' };

/** What a value is calculated from may itself be calculated, this deep. */
export const deepestNames = 32;

type Referred = (name: string) => readonly string[];

/** Follows what lies behind a name. */
export function followNames(name: string, referredBy: Referred): NamesBehind {
  if (heightOf(name, referredBy, new Map(), deepestNames) > deepestNames) return { kind: 'too-deep' };
  const through = wayRound(name, referredBy);
  return through === null ? { kind: 'fine' } : { kind: 'circle', through };
}

/** How many steps lead down from a name at most; more than any limit once the budget is used up. */
function heightOf(name: string, referredBy: Referred, known: Map<string, number>, budget: number): number {
  const height = known.get(name);
  if (height !== undefined) return height;
  if (budget < 0) return Number.POSITIVE_INFINITY;
  known.set(name, 0); // met again on the way down: a circle, which is told as such
  let highest = 0;
  for (const next of referredBy(name)) {
    highest = Math.max(highest, 1 + heightOf(next, referredBy, known, budget - 1));
    if (highest > deepestNames) return highest;
  }
  known.set(name, highest);
  return highest;
}

/** The shortest way back to a name, if there is one. */
function wayRound(name: string, referredBy: Referred): readonly string[] | null {
  const cameFrom = new Map<string, string>();
  const waiting = [name];
  for (const from of waiting) {
    for (const next of referredBy(from)) {
      if (next === name) return [...wayTo(from, cameFrom), name];
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, from);
      waiting.push(next);
    }
  }
  return null;
}

function wayTo(name: string, cameFrom: ReadonlyMap<string, string>): readonly string[] {
  const way = [name];
  for (let from = cameFrom.get(name); from !== undefined; from = cameFrom.get(from)) way.unshift(from);
  return way;
}
