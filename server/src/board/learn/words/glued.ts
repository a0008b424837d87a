/** The cheapest way to take a word apart up to a place in it. */
interface SplitStep {
  readonly cost: number;
  /** Where the last part begins. */
  readonly from: number;
  /** The known word that the last part is. */
  readonly part: string;
}

const shortest = 5;
const longest = 48;
const longestPart = 24;
const mostCost = 4.2;

/** Short parts are dear: two letters are found in any word. */
function costOf(part: string): number {
  return part.length >= 4 ? 1 : part.length === 3 ? 1.7 : 2.4;
}

/**
 * The known words that make up a word which is several written as one: `warnspannung`, `gyrofilter`. Null where they
 * don't make up all of it. `knownPart`: the known word that a piece of it is, which may be joined to the next one.
 */
export function gluedParts(
  word: string,
  knownPart: (piece: string, isLast: boolean) => string | null,
): readonly string[] | null {
  if (word.length < shortest || word.length > longest) return null;
  const steps: (SplitStep | undefined)[] = [{ cost: 0, from: -1, part: '' }];
  for (let end = 2; end <= word.length; end++)
    for (let start = Math.max(0, end - longestPart); start <= end - 2; start++) {
      const before = steps[start];
      const part = before === undefined ? null : knownPart(word.slice(start, end), end === word.length);
      if (before === undefined || part === null) continue;
      const cost = before.cost + costOf(part);
      if (cost < (steps[end]?.cost ?? Number.POSITIVE_INFINITY)) steps[end] = { cost, from: start, part };
    }
  return partsAlong(steps, word.length);
}

function partsAlong(steps: readonly (SplitStep | undefined)[], length: number): readonly string[] | null {
  if ((steps[length]?.cost ?? Number.POSITIVE_INFINITY) > mostCost) return null;
  const parts: string[] = [];
  for (let at = length; at > 0; ) {
    const step = steps[at];
    if (step === undefined) return null;
    parts.unshift(step.part);
    at = step.from;
  }
  return parts.length > 1 ? parts : null;
}
