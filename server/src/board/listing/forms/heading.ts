import type { Stretch } from '../listing';
import { hasLetterOrDigit, quotedFrom, trimmed } from '../text/characters';
import { match } from './match';
import type { Literal, Template } from './template';

export interface HeadingRead {
  readonly group: Stretch;
  /** Other lines may look the same: it is one only where settings follow. */
  readonly isWeak: boolean;
}

const longestGroup = 80;
const mostWords = 8;

/** The heading that a line is, by the first form that fits. */
export function readHeading(templates: readonly Template[], text: string): HeadingRead | null {
  if (text.length > 2 * longestGroup) return null;
  for (const template of templates) {
    const group = match(template, text)?.get('group');
    if (group === undefined || group.end <= group.start) continue;
    const named = inner(text, group);
    const words = text.slice(named.start, named.end).split(/\s+/);
    if (words.length <= mostWords && named.end - named.start <= longestGroup)
      return { group: named, isWeak: isWeak(template) };
  }
  return null;
}

const mostTitleWords = 2;

/** Whether a comment may be the name of what follows: a word or two. */
export function isTitle(text: string): boolean {
  return text.split(/\s+/).length <= mostTitleWords && /^[\p{L}\p{N}][\p{L}\p{N}\s_./&-]*$/u.test(text);
}

/** Whether nothing that says something stands right before a line, and none between it and the settings below it. */
export function isAloneAbove(index: number, next: number, textOf: (index: number) => string): boolean {
  const saysNothing = (at: number) => !hasLetterOrDigit(textOf(at));
  let at = index + 1;
  while (at < next && textOf(at).trim() !== '' && saysNothing(at)) at += 1;
  return at === next && (index === 0 || saysNothing(index - 1));
}

function inner(text: string, at: Stretch): Stretch {
  const quoted = quotedFrom(text, at.start, at.end);
  if (quoted !== null) return { start: quoted.start, end: quoted.end };
  const [start, end] = trimmed(text, at.start, at.end);
  return { start, end };
}

/** A heading between two marks, or with a word of its own, is one for sure. */
function isWeak({ literals }: Template): boolean {
  const [first, last] = [literals[0], literals.at(-1)];
  if (first === undefined || last === undefined) return true;
  return !(hasWord(first) || hasWord(last)) && (first.pieces.length === 0 || last.pieces.length === 0);
}

function hasWord({ pieces }: Literal): boolean {
  return pieces.some((piece) => piece.kind === 'text' && /[\p{L}{]/u.test(piece.text));
}
