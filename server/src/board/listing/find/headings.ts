import { isTitle } from '../forms/heading';
import { afterRow } from '../forms/template';
import { closing, isLetterOrDigit, opening } from '../text/characters';

/** A line that may be a heading, with what follows it. */
export interface HeadingLine {
  readonly text: string;
  /** Whether settings follow, or another heading. */
  readonly leads: boolean;
  /** What sets it apart from settings: those below it stand further in, or a blank line is before it. */
  readonly apart: 'deeper' | 'below-blank' | 'first' | null;
  /** Whether it may as well be a setting without a value. */
  readonly isEmpty: boolean;
}

interface Decorated {
  readonly prefix: string;
  readonly core: string;
  readonly suffix: string;
}

const longestGroup = 60;
const mostWords = 4;
const mostTemplates = 6;
const leastShare = 0.6;

/** The forms of headings among lines: a name between marks, behind a word, or alone above its settings. */
export function headingsAmong(lines: readonly HeadingLine[]): readonly string[] {
  const groups = new Map<string, { line: HeadingLine; decorated: Decorated }[]>();
  for (const line of lines) {
    const decorated = decoratedOf(line.text);
    if (decorated === null) continue;
    const key = `${decorated.prefix}{}${decorated.suffix}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [{ line, decorated }]);
    else group.push({ line, decorated });
  }
  return [...groups.values()]
    .filter((group) => isHeadings(group))
    .sort((one, other) => other.length - one.length)
    .slice(0, mostTemplates)
    .flatMap((group) => templateFor(group.map(({ decorated }) => decorated)) ?? []);
}

/** A comment that may be a heading, with what stands around it. */
export interface CommentLine {
  readonly text: string;
  readonly mark: string;
  /** Whether settings follow. */
  readonly leads: boolean;
  /** Whether it stands alone above them: nothing is right before it, no other comment between. */
  readonly isAlone: boolean;
}

const leastTitles = 2;

/** The forms of headings that are written as comments: names between marks, or alone above settings. */
export function headingsInComments(comments: readonly CommentLine[]): readonly string[] {
  const groups = new Map<string, Decorated[]>();
  for (const { text, mark, leads, isAlone } of comments) {
    const decorated = leads ? decoratedOf(text) : null;
    if (decorated === null) continue;
    const { prefix, core, suffix } = decorated;
    const isBetween =
      isMirrored(prefix.slice(mark.length), suffix) || (isMirrored(prefix, suffix) && suffix !== '');
    const isTitleAlone = isAlone && prefix.trim() === mark && /^:?$/.test(suffix) && isTitle(core);
    if (!isBetween && !isTitleAlone) continue;
    const key = `${prefix}{}${suffix}`;
    groups.set(key, [...(groups.get(key) ?? []), decorated]);
  }
  return [...groups.values()]
    .filter((group) => new Set(group.map(({ core }) => core)).size >= leastTitles)
    .slice(0, mostTemplates)
    .flatMap(([first]) => (first === undefined ? [] : [`${first.prefix}{group}${first.suffix}`]));
}

/** Whether a line is a heading by itself: between marks that mirror each other, or behind a word for it. */
export function isSurelyHeading(text: string): boolean {
  const decorated = decoratedOf(text);
  if (decorated === null) return false;
  const { prefix, core, suffix } = decorated;
  if (isMirrored(prefix, suffix)) return true;
  return prefix === '' && (suffix.endsWith('{') || (suffix.endsWith(':') && leadWord(core) !== null));
}

function isHeadings(
  group: readonly { readonly line: HeadingLine; readonly decorated: Decorated }[],
): boolean {
  const leading = group.filter(({ line }) => line.leads);
  const [first] = group;
  if (first === undefined || leading.length === 0 || leading.length < leastShare * group.length) return false;
  const { prefix, core, suffix } = first.decorated;
  if (isMirrored(prefix, suffix)) return true;
  const apart = leading.filter(({ line }) => line.apart !== null);
  const isApart = apart.some(({ line }) => line.apart !== 'first');
  const isEmpty = group.some(({ line }) => line.isEmpty);
  const isBare = prefix === '' && suffix === '';
  if (isBare && group.some(({ decorated }) => !isShortName(decorated.core))) return false;
  const isDeeper = leading.some(({ line }) => line.apart === 'deeper');
  if (isEmpty || isBare) return (isDeeper && !isBare) || (isApart && apart.length === leading.length);
  if (suffix.endsWith('{')) return true;
  if (/[:([]$/.test(suffix)) return apart.length > 0 || group.length > 1 || leadWord(core) !== null;
  if (suffix !== '') return false;
  if (isSingleMark(prefix)) return leading.every(({ line }) => line.apart === 'deeper');
  return (prefix.endsWith(' ') || isRow(prefix)) && (isApart || group.length > 1);
}

/** What stands above settings without a mark names them in a few words; more say something. */
function isShortName(core: string): boolean {
  const words = core.split(/\s+/);
  return words.length <= 3 && (words.length === 1 || !/^\d/.test(core));
}

function isRow(marks: string): boolean {
  return marks.length > 1 && marks === (marks[0] ?? '').repeat(marks.length);
}

/** One mark that names of settings seldom have before them; a sign says that something is on or off. */
function isSingleMark(prefix: string): boolean {
  return /^[^\s+\-!]$/.test(prefix);
}

/** Marks before a name that close behind it as they opened: `[`, `== `, `<-- `. */
function isMirrored(prefix: string, suffix: string): boolean {
  const before = prefix.replaceAll(/\s/g, '');
  const after = suffix.replaceAll(/[\s:]/g, '');
  const mirrored = [...before]
    .reverse()
    .map((mark) => closing.get(mark) ?? opening.get(mark) ?? mark)
    .join('');
  // Quotes are a part of names.
  if (before === '' || /^["'`]+$/.test(before)) return false;
  return after === mirrored || after === before;
}

/** A name with marks around it; null for what is too long, or a sentence. */
function decoratedOf(text: string): Decorated | null {
  let start = 0;
  while (start < text.length && !isLetterOrDigit(text[start])) start += 1;
  let end = text.length;
  while (end > start && !isLetterOrDigit(text[end - 1])) end -= 1;
  const core = text.slice(start, end);
  if (
    core === '' ||
    core.length > longestGroup ||
    /\t|[|\u2502]| = |[,;] /.test(core) ||
    core.split(/\s+/).length > mostWords
  )
    return null;
  // A bracket that the name itself closes is part of it: `cache (all)`.
  const own = /[)\]]$/.test(text) && /[([]/.test(core) && start === 0 ? text.length : end;
  return {
    prefix: withShortRows(text.slice(0, start)),
    core: text.slice(start, own),
    suffix: withShortRows(text.slice(own)),
  };
}

/** Rows of marks three long, as templates write them. */
function withShortRows(marks: string): string {
  let short = '';
  for (let at = 0; at < marks.length; ) {
    const end = afterRow(marks, at);
    short += marks.slice(at, end - at > 3 && marks[at] !== ' ' ? at + 3 : end);
    at = end;
  }
  return short;
}

/** Words before the name of a group that are no part of it. */
const leadWords: ReadonlySet<string> = new Set([
  ...['in', 'section', 'group', 'block', 'part', 'page', 'menu', 'for', 'of'],
  ...['abschnitt', 'gruppe', 'bereich', 'teil', 'seite', 'f\u00fcr'],
  ...['groupe', 'dans', 'partie', 'bloc', 'pour'],
]);

function leadWord(core: string): string | null {
  const [first = '', second] = core.split(/\s+/);
  return second !== undefined && leadWords.has(first.toLowerCase()) ? first : null;
}

function templateFor(group: readonly Decorated[]): string | null {
  const [first] = group;
  if (first === undefined) return null;
  const cores = [...new Set(group.map(({ core }) => core))];
  const [one = ''] = cores;
  const shared = cores.length > 1 ? sharedStart(cores) : (leadOfOne(one) ?? '');
  const rest = cores.map((core) => core.slice(shared.length));
  const ending = rest.length > 1 ? sharedEnd(rest) : '';
  return `${first.prefix}${shared}{group}${ending}${first.suffix}`;
}

/** What stands before the name in a single heading: a word for it, or all up to `name="`. */
function leadOfOne(core: string): string | null {
  const joint = /[\w-]=["']/.exec(core);
  if (joint !== null && core.includes(' ')) return core.slice(0, joint.index + joint[0].length);
  const word = leadWord(core);
  return word === null ? null : `${word} `;
}

/** What all begin with, up to a blank or a mark: the words before the names. */
function sharedStart(texts: readonly string[]): string {
  const [first = '', ...others] = texts;
  let end = 0;
  while (end < first.length && others.every((text) => text[end] === first[end])) end += 1;
  while (end > 0 && !/[\s"'=:]/.test(first[end - 1] ?? '')) end -= 1;
  return first.slice(0, end);
}

function sharedEnd(texts: readonly string[]): string {
  const [first = '', ...others] = texts;
  let length = 0;
  const at = (text: string, back: number) => text[text.length - 1 - back];
  while (length < first.length && others.every((text) => at(text, length) === at(first, length))) length += 1;
  while (length > 0 && !/\s/.test(at(first, length - 1) ?? '')) length -= 1;
  return length === 0 ? '' : first.slice(first.length - length);
}
