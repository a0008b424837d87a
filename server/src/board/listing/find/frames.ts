import type { Frame } from '../listing';
import { isDamaged } from '../text/damage';
import type { Sample } from './sample';

const most = 4;

/** The forms of lines that stand before or after the settings of a text, to know them again. */
export function framesOf(frames: readonly Frame[], text: string, settings: number): readonly string[] {
  const forms = frames.flatMap(({ at }) => frameForm(text.slice(at.start, at.end), settings) ?? []);
  return [...new Set(forms)].slice(0, most);
}

/** A line that is the same each time, but for how many settings there are; null for one with other numbers. */
function frameForm(line: string, settings: number): string | null {
  // What a terminal hides in it stands in no form.
  if (isDamaged(line)) return null;
  const numbers = line.match(/\d+/g) ?? [];
  if (numbers.length === 0) return line.length > 120 || /[{}]/.test(line) ? null : line;
  const [only] = numbers;
  if (numbers.length > 1 || only === undefined || only !== String(settings) || line.length > 120) return null;
  const at = line.indexOf(only);
  // The count is a word of its own: `66 settings`, `(66)`, not `v66`.
  if (/[\p{L}.]/u.test((line[at - 1] ?? '') + (line[at + only.length] ?? '').replace('.', ''))) return null;
  return `${line.slice(0, at)}{count}${line.slice(at + only.length)}`;
}

const mostAtEdge = 2;
/** Of fewer lines none counts the others. */
const leastLines = 3;

/** Lines at the start or end of a listing that say how many settings it has, as templates, with their places. */
export interface CountLines {
  readonly opening: readonly string[];
  readonly closing: readonly string[];
  readonly indices: ReadonlySet<number>;
}

/** Sentences at the edges of a listing with a number that may count what stands between them. */
export function countLines(body: readonly Sample[], lines: number): CountLines {
  const opening: string[] = [];
  const closing: string[] = [];
  const indices = new Set<number>();
  if (body.length < leastLines) return { opening, closing, indices };
  const counted = body.map(({ text }) => countIn(text, lines));
  const others = body.filter((_, at) => counted[at] === null);
  for (const [at, { index, text }] of body.entries()) {
    const found = counted[at];
    const isFirst = at < mostAtEdge;
    if (found == null || (!isFirst && at < body.length - mostAtEdge)) continue;
    if (others.some((line) => looksAlike(line.text, text, found))) continue;
    (isFirst ? opening : closing).push(found.form);
    indices.add(index);
  }
  return { opening, closing, indices };
}

interface NumberPlace {
  readonly form: string;
  /** Which word the number is. */
  readonly word: number;
}

/** The one number of a sentence of plain words; at its end it stands in brackets, or it would be a value. */
function countIn(text: string, lines: number): NumberPlace | null {
  if (text.length > 120 || text.includes('\t')) return null;
  const words = text.split(/\s+/).map((word) => word.replace(/[.,]$/, ''));
  const isNumber = (word: string) => /^(?:\d+|\(\d+\))$/.test(word);
  const at = words.findIndex(isNumber);
  const word = words[at] ?? '';
  const count = Number(word.replace(/[()]/g, ''));
  const areWords = words.every((one, index) => index === at || /^[\p{L}'\u2019-]+$/u.test(one));
  const isValue = at === words.length - 1 && !word.startsWith('(');
  if (at < 0 || words.length < 3 || !areWords || isValue || count < 1 || count > lines) return null;
  return { form: text.replace(/\d+/, '{count}'), word: at };
}

/** What stands in other lines as well is how settings are written: a word, or a number at the same place. */
function looksAlike(one: string, other: string, { word }: NumberPlace): boolean {
  const words = one.split(/\s+/);
  const said = new Set(other.split(/\s+/).filter((text) => /^\p{L}+$/u.test(text)));
  const isSamePlace = /^\d/.test(other.split(/\s+/)[word] ?? '') && /^\d/.test(words[word] ?? '');
  return isSamePlace || words.some((text) => said.has(text));
}
