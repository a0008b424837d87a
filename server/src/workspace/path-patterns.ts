/**
 * Whether a path, relative to a folder and with plain slashes, is one of those that patterns mean: it matches one, or
 * lies below a folder that does. `*` is anything within a name, `**` any folders, `?` one character, `[a-c]` one of
 * some, `{a,b}` either; what begins with `!` is taken out again. Names that begin with a dot must be named so.
 * The command line searches by the same patterns. None of them takes longer than pattern times path.
 */
export function pathsMeant(patterns: readonly string[]): (path: string) => boolean {
  const isMeant = anyOf(patterns.filter((pattern) => !pattern.startsWith('!')));
  const isExcepted = anyOf(
    patterns.flatMap((pattern) => (pattern.startsWith('!') ? [pattern.slice(1)] : [])),
  );
  return (path) => isMeant(path) && !isExcepted(path);
}

/** Any number of characters of a name, or of folders of a path. */
const any = Symbol('any');

/** A character that a pattern takes; `isWild` where it does not name it. */
interface One {
  readonly isWild: boolean;
  takes(character: string): boolean;
}

type NamePattern = readonly (One | typeof any)[];
type PathPattern = readonly (NamePattern | typeof any)[];

function anyOf(patterns: readonly string[]): (path: string) => boolean {
  const all = patterns.flatMap(withoutBraces).map(pathPattern);
  return (path) => all.some((pattern) => fitsPath(pattern, path.split('/')));
}

/** Braces may stand for very many patterns: nobody writes more. */
const mostOfBraces = 200;

/** `{a,b}.craft` is `a.craft` and `b.craft`. */
function withoutBraces(pattern: string): readonly string[] {
  const done: string[] = [];
  const open = [pattern];
  for (let next = open.pop(); next !== undefined && done.length < mostOfBraces; next = open.pop()) {
    const end = next.indexOf('}');
    const start = end < 0 ? -1 : next.lastIndexOf('{', end);
    const inside = start < 0 ? [] : next.slice(start + 1, end).split(',');
    if (inside.length < 2) done.push(next);
    else for (const one of inside) open.push(next.slice(0, start) + one + next.slice(end + 1));
  }
  return done;
}

function pathPattern(pattern: string): PathPattern {
  const names = pattern.split('/').filter((name) => name !== '' && name !== '.');
  const parts = names.map((name) => (name === '**' ? any : namePattern(name)));
  // As on the command line, only what has no open end names a folder with all that lies below it.
  return pattern.endsWith('*') ? parts : [...parts, any];
}

function namePattern(text: string): NamePattern {
  const parts: (One | typeof any)[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at] ?? '';
    const end = character === '[' ? text.indexOf(']', at + 2) : -1;
    if (character === '*') parts.push(any);
    else if (character === '?') parts.push({ isWild: true, takes: () => true });
    else if (end > 0) {
      parts.push(oneOf(text.slice(at + 1, end)));
      at = end;
    } else {
      if (character === '\\') at += 1;
      const named = text[at] ?? character;
      parts.push({ isWild: false, takes: (one) => one === named });
    }
  }
  return parts;
}

/** `a-c` or `!a-c`, as it stands in brackets. */
function oneOf(text: string): One {
  const isNot = text.startsWith('!') || text.startsWith('^');
  const some = isNot ? text.slice(1) : text;
  const ranges: (readonly [string, string])[] = [];
  for (let at = 0; at < some.length; at += 1) {
    const from = some[at] ?? '';
    const isRange = some[at + 1] === '-' && at + 2 < some.length;
    ranges.push([from, isRange ? (some[at + 2] ?? '') : from]);
    if (isRange) at += 2;
  }
  const isIn = (one: string) => ranges.some(([from, to]) => from <= one && one <= to);
  return { isWild: true, takes: (one) => isIn(one) !== isNot };
}

function fitsPath(pattern: PathPattern, names: readonly string[]): boolean {
  return fits(
    pattern,
    names,
    (part, name) => fitsName(part, name),
    (name) => !name.startsWith('.'),
  );
}

function fitsName(pattern: NamePattern, name: string): boolean {
  const isHidden = (character: string, at: number) => at === 0 && character === '.';
  return fits(
    pattern,
    [...name],
    ({ isWild, takes }, character, at) => takes(character) && !(isWild && isHidden(character, at)),
    (character, at) => !isHidden(character, at),
  );
}

/** Whether a pattern takes all of a row. Where it fails, what was last taken by `any` takes one more. */
function fits<P extends object, T>(
  pattern: readonly (P | typeof any)[],
  row: readonly T[],
  takes: (part: P, one: T, at: number) => boolean,
  anyTakes: (one: T, at: number) => boolean,
): boolean {
  let [part, at, lastAny, taken] = [0, 0, -1, 0];
  for (; at < row.length; ) {
    const next = pattern[part];
    const one = row[at];
    if (next === any) {
      [lastAny, taken] = [part, at];
      part += 1;
    } else if (next !== undefined && one !== undefined && takes(next, one, at)) {
      part += 1;
      at += 1;
    } else {
      const more = row[taken];
      if (lastAny < 0 || more === undefined || !anyTakes(more, taken)) return false;
      taken += 1;
      at = taken;
      part = lastAny + 1;
    }
  }
  return pattern.slice(part).every((rest) => rest === any);
}
