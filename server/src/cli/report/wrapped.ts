import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';

/** Text for people is read most easily in lines of no more than this. */
const readable = 96;

/**
 * Breaks one paragraph between words, so that no line takes more columns than `width`: the first line begins with
 * `lead`, the others with `indent`. A word that is longer stands whole: it may be a path to click on. Without a
 * width nothing is broken.
 */
export function wrapped(
  text: string,
  width: number | null,
  { lead = '', indent = ' '.repeat(stringWidth(lead)) } = {},
): string {
  if (width === null) return `${lead}${text}`;
  const room = width - Math.max(stringWidth(lead), stringWidth(indent));
  const [first = '', ...rest] = wrapAnsi(text, room).split('\n');
  return [`${lead}${first}`, ...rest.map((line) => `${indent}${line}`)].join('\n');
}

/** A line broken so that the blanks that it begins with stay, and what goes on stands two further in. */
export function brokenLine(line: string, { width }: { readonly width: number | null }): string {
  const [lead = ''] = /^ */.exec(line) ?? [];
  return wrapped(line.slice(lead.length), width, { lead, indent: `${lead}  ` });
}

/** The width for prose: that of the terminal, but no wider than is read with ease. */
export function proseWidth(width: number | null): number {
  return Math.min(width ?? readable, readable);
}
