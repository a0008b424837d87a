/** What may stand between two fields of a listing. */
export interface Separator {
  /** `=`, `->`, `is`; '' for nothing but blanks. */
  readonly core: string;
  /** Whether blanks always stand before it, and behind it. */
  readonly before: boolean;
  readonly after: boolean;
}

/** How many are looked at further. */
const most = 14;
/** A separator stands in at least this share of the lines. */
const leastShare = 0.3;

/** What stands between pieces of many lines, the most frequent first: marks, and words that come back in each. */
export function separatorsIn(lines: readonly string[]): readonly Separator[] {
  const counts = new Map<string, { lines: number; all: number; before: number; after: number }>();
  for (const line of lines) {
    const inLine = new Set<string>();
    for (const match of line.matchAll(/[^A-Za-z0-9"'\s]+|[a-z]+|\t/g)) {
      const [core] = match;
      const at = match.index;
      if (at === 0) continue;
      const end = at + core.length;
      const count = counts.get(core) ?? { lines: 0, all: 0, before: 0, after: 0 };
      if (!inLine.has(core)) count.lines += 1;
      inLine.add(core);
      count.all += 1;
      if (isBlank(line[at - 1])) count.before += 1;
      if (end === line.length || isBlank(line[end])) count.after += 1;
      counts.set(core, count);
    }
  }
  const found = [...counts]
    .filter(([core, count]) => count.lines >= leastShare * lines.length && (!isWord(core) || isAlone(count)))
    .sort(([one, a], [other, b]) => b.lines - a.lines || other.length - one.length)
    .slice(0, most)
    .map(([core, { all, before, after }]) => ({
      core: core === '\t' ? '' : core,
      before: core !== '\t' && before >= 0.98 * all,
      after: core !== '\t' && after >= 0.98 * all,
    }));
  const blank = { core: '', before: false, after: false };
  return [...found.filter(({ core }) => core !== ''), blank];
}

function isWord(core: string): boolean {
  return /^[a-z]+$/.test(core);
}

/** A word is a separator only where it stands by itself each time. */
function isAlone({ all, before, after }: { all: number; before: number; after: number }): boolean {
  return before >= 0.98 * all && after >= 0.98 * all;
}

function isBlank(character: string | undefined): boolean {
  return character === ' ' || character === '\t';
}

/** The text of a template between two fields. */
export function literalText({ core, before, after }: Separator): string {
  return core === '' ? ' ' : `${before ? ' ' : ''}${core}${after ? ' ' : ''}`;
}

/** Cuts a text at a separator, into at most `limit` pieces; the last keeps the rest. */
export function cut(text: string, { core, before, after }: Separator, limit: number): readonly string[] {
  const pieces: string[] = [];
  let from = 0;
  let at = 0;
  while (pieces.length < limit - 1) {
    at =
      core === ''
        ? blankAfter(text, from)
        : text.indexOf(core, Math.max(at, from + (pieces.length === 0 ? 1 : 0)));
    if (at < 0) break;
    const end = at + core.length;
    const fits = (!before || isBlank(text[at - 1])) && (!after || end === text.length || isBlank(text[end]));
    if (core !== '' && !fits) {
      at += 1;
      continue;
    }
    pieces.push(text.slice(from, at).trim());
    from = core === '' ? at : end;
    while (core === '' && isBlank(text[from])) from += 1;
    at = from;
  }
  pieces.push(text.slice(from).trim());
  return pieces;
}

function blankAfter(text: string, from: number): number {
  let at = from;
  while (at < text.length && !isBlank(text[at])) at += 1;
  return at < text.length ? at : -1;
}
