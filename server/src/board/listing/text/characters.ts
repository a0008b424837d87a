/** A blank that parts words in a line: French sets a narrow one before a colon. */
export function isBlank(character: string | undefined): boolean {
  return (
    character === ' ' ||
    character === '\t' ||
    character === '\u00a0' ||
    character === '\u202f' ||
    character === '\u3000'
  );
}

/** The stretch of `text` from `from` to `to` without blanks at either end. */
export function trimmed(text: string, from = 0, to = text.length): [start: number, end: number] {
  let [start, end] = [from, to];
  while (start < end && isBlank(text[start])) start += 1;
  while (end > start && isBlank(text[end - 1])) end -= 1;
  return [start, end];
}

/** The same without whatever is space at either end, line ends as well. */
export function trimmedOfSpace(text: string, from: number, to: number): [start: number, end: number] {
  let [start, end] = [from, to];
  while (start < end && /\s/.test(text[start] ?? '')) start += 1;
  while (end > start && /\s/.test(text[end - 1] ?? '')) end -= 1;
  return [start, end];
}

/** Where the blanks that begin at `from` end. */
export function afterBlanks(text: string, from: number, to = text.length): number {
  let at = from;
  while (at < to && isBlank(text[at])) at += 1;
  return at;
}

/** Where the word ends that goes on at `from`; `from` where none does. */
export function afterWord(text: string, from: number, to = text.length): number {
  let at = from;
  while (at < to && !isBlank(text[at])) at += 1;
  return at;
}

const letterOrDigit = /[\p{L}\p{N}]/u;

export function isLetterOrDigit(character: string | undefined): boolean {
  if (character === undefined) return false;
  const code = character.charCodeAt(0);
  if (code < 128)
    return (code >= 48 && code <= 57) || (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  // Half of a pair: a letter of a rare alphabet, or a picture; both are no punctuation.
  return (code >= 0xd800 && code <= 0xdfff) || letterOrDigit.test(character);
}

export function hasLetterOrDigit(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) if (isLetterOrDigit(text[at])) return true;
  return false;
}

/** Whether the words that stand at a place of a text are a part of longer ones. */
export function isInWord(text: string, words: string, at: number): boolean {
  const end = at + words.length;
  return (
    (isLetterOrDigit(text[at - 1]) && isLetterOrDigit(words[0])) ||
    (isLetterOrDigit(text[end]) && isLetterOrDigit(words.at(-1)))
  );
}

export function isDigit(character: string | undefined): boolean {
  return character !== undefined && character >= '0' && character <= '9';
}

/** What closes what this character opens, in names and values. */
export const closing: ReadonlyMap<string, string> = new Map([
  ['[', ']'],
  ['(', ')'],
  ['{', '}'],
  ['<', '>'],
]);

/** What opens what this character closes. */
export const opening: ReadonlyMap<string, string> = new Map(
  [...closing].map(([open, close]) => [close, open]),
);

/** The quotes that boards and people write, each with what closes it. */
const quotes: ReadonlyMap<string, string> = new Map([
  ['"', '"'],
  ["'", "'"],
  ['`', "`'"],
  ['\u201c', '\u201d'],
  ['\u201e', '\u201c\u201d'],
  ['\u2018', '\u2019'],
  ['\u00ab', '\u00bb'],
  ['\u00bb', '\u00ab'],
]);

/** A text in quotes: where it begins and ends inside of them, and where the closing quote ends. */
export interface Quoted {
  readonly start: number;
  readonly end: number;
  readonly after: number;
  /** The quote; where the closing one differs, both. */
  readonly mark: string;
}

/**
 * The text in quotes that begins at `at`; null where none does or it is not closed. A quote behind a backslash is
 * part of the text, and so is a doubled one.
 */
export function quotedAt(text: string, at: number, to = text.length): Quoted | null {
  const open = text[at] ?? '';
  const closers = quotes.get(open);
  if (closers === undefined) return null;
  for (let place = at + 1; place < to; place += 1) {
    const character = text[place] ?? '';
    if (character === '\\' && open !== '`') place += 1;
    // Within a word it is an apostrophe, or parts thousands.
    else if (closers.includes(character) && !isLetterOrDigit(text[place + 1])) {
      if (text[place + 1] === character && character === open && place > at + 1) place += 1;
      else {
        const mark = character === open ? open : open + character;
        return { start: at + 1, end: place, after: place + 1, mark };
      }
    }
  }
  return null;
}

/** The text in quotes that a stretch of a text is from end to end; null where it is none. */
export function quotedFrom(text: string, start: number, end: number): Quoted | null {
  const quoted = quotedAt(text, start, end);
  return quoted?.after === end ? quoted : null;
}

/** A text without the quotes around it, if it stands in some. */
export function textWithoutQuotes(text: string): string {
  const quoted = quotedFrom(text, 0, text.length);
  return quoted === null ? text : text.slice(quoted.start, quoted.end);
}

/**
 * Where the text in quotes ends that begins at `at`; null where none does. `unclosed`: quotes that nothing closes, so that
 * a line of many is looked through once.
 */
export function afterQuote(text: string, at: number, unclosed: Set<string>): number | null {
  const character = text[at] ?? '';
  // Within a word it is an apostrophe.
  if (!quotes.has(character) || isLetterOrDigit(text[at - 1]) || unclosed.has(character)) return null;
  const quoted = quotedAt(text, at);
  if (quoted === null) unclosed.add(character);
  return quoted?.after ?? null;
}

/** Whether a line begins with one of these marks, behind blanks or not. */
export function beginsWithAny(text: string, marks: readonly string[]): boolean {
  const start = text.trimStart();
  return marks.some((mark) => start.startsWith(mark));
}
