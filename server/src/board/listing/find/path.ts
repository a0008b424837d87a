/** What may part groups in a name, the surest first. */
const marks = ['::', ' / ', ' > ', ': ', ' - ', '->', '/', '\\', '|', '>', '.', ':'] as const;
const leastShare = 0.5;

/** What parts the groups from the names, where most names hold it and share their first step with others. */
export function pathIn(names: readonly string[]): string | undefined {
  if (names.length < 2) return undefined;
  return marks.find((mark) => {
    const parted = names.filter((name) => isParted(name, mark));
    const first = new Set(parted.map((name) => name.slice(0, name.indexOf(mark))));
    return parted.length >= 2 && parted.length >= leastShare * names.length && first.size < parted.length;
  });
}

function isParted(name: string, mark: string): boolean {
  if (!name.includes(mark)) return false;
  const steps = name.split(mark);
  return steps.every((step) => step.trim() !== '') && steps.some((step) => /\p{L}/u.test(step));
}
