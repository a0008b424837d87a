/** How well a text answers what was typed, the best last. */
const ranks = { scattered: 0, inside: 1, atWord: 2, atStart: 3, whole: 4 } as const;

/**
 * A number to sort by, higher is better; null where the typed letters do not all occur in order. Capitals
 * and blanks don't count. Nothing typed fits everything.
 */
export function fuzzyScore(typed: string, text: string): number | null {
  const wanted = typed.toLowerCase().replace(/\s+/g, '');
  const given = text.toLowerCase();
  const rank = rankOf(wanted, given);
  // Of two that fit alike the shorter one is nearer to what was typed.
  return rank === null ? null : rank - given.length / (given.length + 1);
}

function rankOf(wanted: string, given: string): number | null {
  if (wanted === given) return ranks.whole;
  if (given.startsWith(wanted)) return ranks.atStart;
  for (let at = given.indexOf(wanted); at >= 0; at = given.indexOf(wanted, at + 1)) {
    if (/[\s.@-]/.test(given[at - 1] ?? '')) return ranks.atWord;
  }
  if (given.includes(wanted)) return ranks.inside;
  return occursInOrder(wanted, given) ? ranks.scattered : null;
}

function occursInOrder(wanted: string, given: string): boolean {
  let from = 0;
  for (const letter of wanted) {
    const at = given.indexOf(letter, from);
    if (at < 0) return false;
    from = at + letter.length;
  }
  return true;
}
