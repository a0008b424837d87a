import { isName, valueLook } from './looks';
import { cutRemark } from './remarks';
import { cut, literalText, type Separator, separatorsIn } from './separators';

/** How settings lines of a listing are laid out, as a template of a board's profile. */
export interface Layout {
  readonly template: string;
  /** What every line begins with, such as a prompt; part of the template. */
  readonly prefix: string;
  /** What ends a value where more stands behind it. */
  readonly remarks: readonly string[];
  /** How well it fits: lines that it reads, and a little for what speaks for it. */
  readonly score: number;
}

/** Lines that are looked at to find the layout. */
const mostLooked = 1500;
const mostColumns = 8;

/** The layout that reads most of a listing's lines; null where none reads a fair share of them. */
export function bestLayout(lines: readonly string[]): Layout | null {
  const sample = spread(lines, mostLooked);
  let best: Layout | null = null;
  for (const [prefix, suffix] of edgesOf(sample)) {
    const inner = sample.flatMap((line) => withoutEdges(line, prefix, suffix) ?? []);
    if (inner.length < 0.2 * sample.length) continue;
    for (const separator of separatorsIn(inner)) {
      const layout = layoutWith(inner, separator, prefix, suffix);
      if (layout !== null && layout.score > (best?.score ?? 0)) best = layout;
    }
  }
  return best !== null && best.score >= Math.max(1, 0.15 * sample.length) ? best : null;
}

/** Every n-th line, so that all of a long listing has a say. */
function spread(lines: readonly string[], most: number): readonly string[] {
  const step = Math.max(1, Math.ceil(lines.length / most));
  return step === 1 ? lines : lines.filter((_, index) => index % step === 0);
}

/** What many lines begin and end with: a prompt, a bar, a word that does something; a semicolon. */
function edgesOf(lines: readonly string[]): readonly (readonly [prefix: string, suffix: string])[] {
  const heads = frequent(
    lines,
    (line) => /^(?:[^A-Za-z0-9"'\s]{1,4}|[A-Za-z]{2,12}(?= ))\s?/.exec(line)?.[0] ?? null,
  );
  const tails = frequent(lines, (line) => /[^A-Za-z0-9"'\s%)\]}]$/.exec(line)?.[0] ?? null);
  return ['', ...heads].flatMap((head) => ['', ...tails].map((tail) => [head, tail] as const));
}

/** What half of the lines have in common. */
function frequent(lines: readonly string[], pick: (line: string) => string | null): readonly string[] {
  const counts = new Map<string, number>();
  for (const line of lines) {
    const found = pick(line);
    if (found !== null) counts.set(found, (counts.get(found) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count >= 0.5 * lines.length).map(([text]) => text);
}

function withoutEdges(line: string, prefix: string, suffix: string): string | null {
  if (!line.startsWith(prefix) || !line.endsWith(suffix)) return null;
  const inner = line.slice(prefix.length, line.length - suffix.length).trim();
  return inner === '' ? null : inner;
}

/** Which column holds what. */
interface Roles {
  readonly columns: readonly ('index' | 'group' | 'name' | 'value')[];
  readonly hasMore: boolean;
}

function layoutWith(
  lines: readonly string[],
  separator: Separator,
  prefix: string,
  suffix: string,
): Layout | null {
  const rows = lines.map((line) => cut(line, separator, mostColumns));
  const width = usualWidth(rows);
  const plain = rolesOf(rows, width);
  const candidates = [
    plain,
    width > 2
      ? rolesOf(
          lines.map((line) => cut(line, separator, 2)),
          2,
        )
      : null,
  ];
  let best: Layout | null = null;
  for (const roles of candidates) {
    if (roles === null) continue;
    const layout = scored(lines, separator, roles, prefix, suffix);
    if (layout !== null && layout.score > (best?.score ?? 0)) best = layout;
  }
  return best;
}

function usualWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0] ?? 1;
}

/** Index, group, name and value by what the columns hold; null where no name or no value is among them. */
function rolesOf(all: readonly (readonly string[])[], width: number): Roles | null {
  const rows = all.filter(({ length }) => length === width);
  if (width < 2 || rows.length < 0.3 * all.length) return null;
  const column = (at: number) => rows.map((row) => row[at] ?? '');
  const share = (texts: readonly string[], is: (text: string) => boolean) =>
    texts.filter(is).length / Math.max(1, texts.length);
  const columns: ('index' | 'group' | 'name' | 'value')[] = [];
  for (let at = 0; at < width; at += 1) {
    const texts = column(at);
    const isNamed = share(texts, isName) >= 0.8;
    const distinct = new Set(texts).size / texts.length;
    if (!columns.includes('name')) {
      if (at === 0 && share(texts, isCounting(texts)) >= 0.9) columns.push('index');
      else if (isNamed && distinct < 0.4 && width - at > 2 && share(column(at + 1), isName) >= 0.8)
        columns.push('group');
      else if (isNamed) columns.push('name');
      else return null;
    } else {
      columns.push('value');
      return { columns, hasMore: at < width - 1 };
    }
  }
  return null;
}

/** Whole numbers that go up, but for a corrupt line here and there. */
function isCounting(texts: readonly string[]): (text: string) => boolean {
  const isWhole = (text: string) => /^\d{1,6}$/.test(text);
  const numbers = texts.filter(isWhole).map(Number);
  const rises = numbers.filter(
    (number, index) => index === 0 || number > (numbers[index - 1] ?? number),
  ).length;
  return (text) => rises >= 0.9 * numbers.length && isWhole(text);
}

function scored(
  lines: readonly string[],
  separator: Separator,
  { columns, hasMore }: Roles,
  prefix: string,
  suffix: string,
): Layout | null {
  const names = new Set<string>();
  const marks = new Map<string, number>();
  const groupMarks = new Map<string, number>();
  let [read, weight] = [0, 0];
  for (const line of lines) {
    const pieces = cut(line, separator, hasMore ? columns.length + 1 : columns.length);
    if (pieces.length < columns.length) continue;
    const name = pieces[columns.indexOf('name')] ?? '';
    const group = columns.includes('group') ? (pieces[columns.indexOf('group')] ?? '') : '';
    const rest = pieces[columns.indexOf('value')] ?? '';
    const { value, mark } = hasMore ? { value: rest, mark: null } : cutRemark(rest, /^["']/.test(rest));
    const look = valueLook(value);
    if (!isName(name) || look === null) continue;
    names.add(`${group}\n${name}`);
    if (mark !== null) marks.set(mark, (marks.get(mark) ?? 0) + 1);
    const inner = /^[A-Za-z][A-Za-z0-9 -]*([:/])/.exec(name)?.[1];
    if (inner !== undefined) groupMarks.set(inner, (groupMarks.get(inner) ?? 0) + 1);
    read += 1;
    weight += look === 'words' ? 0.6 : look === 'word' ? 0.9 : 1;
  }
  if (read === 0) return null;
  // A listing names each setting once; what comes back in every line is no name.
  const distinct = names.size / read;
  if (distinct < 0.5) return null;
  const literal = literalText(separator);
  const fields = columns.map((column) => `{${column}}`).join(literal);
  const more = hasMore ? [literal.trimEnd() === '' ? literal : literal.trimEnd()] : [];
  const remarks = [...marks].filter(([, count]) => count >= Math.max(1, 0.01 * read)).map(([mark]) => mark);
  const bonus = separator.core === '' ? 0 : 0.02 * separator.core.length;
  const inner = innerGroup(groupMarks, names, read, columns, separator);
  return {
    // A tab or any other blank behind the prefix: in a template a blank stands for all of them.
    template: `${prefix.replace(/\s$/, ' ')}${inner === null ? fields : fields.replace('{name}', `{group}${inner}{name}`)}${suffix}`,
    prefix,
    remarks: [...more, ...remarks],
    score: weight * (0.5 + 0.5 * distinct) * (1 + bonus) * (prefix === '' && suffix === '' ? 1 : 1.01),
  };
}

/** A mark within the names that parts a few groups from many names: `calm/cut`, `gyro: rate`. */
function innerGroup(
  marks: ReadonlyMap<string, number>,
  names: ReadonlySet<string>,
  read: number,
  columns: Roles['columns'],
  { core }: Separator,
): string | null {
  if (columns.includes('group')) return null;
  const [found] = [...marks]
    .filter(([mark, count]) => count >= 0.95 * read && mark !== core)
    .map(([mark]) => mark);
  if (found === undefined) return null;
  const all = [...names].map((name) => name.slice(1));
  const groups = new Set(all.map((name) => name.slice(0, name.indexOf(found))));
  if (groups.size > 0.5 * all.length) return null;
  const isBlankBehind = all.every((name) => name[name.indexOf(found) + 1] === ' ');
  return isBlankBehind ? `${found} ` : found;
}
