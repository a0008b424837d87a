import type { Stretch } from '../listing';
import { quotedAt, trimmedOfSpace } from '../text/characters';
import { type DocumentEntry, inOneLine } from './document';

/** The start of an element, with places in its document. */
export interface Tag {
  readonly name: string;
  readonly nameAt: Stretch;
  readonly attributes: readonly DocumentEntry[];
  /** Whether it ends with its start: `<x/>`. */
  readonly isEmpty: boolean;
  /** Behind its angle. */
  readonly end: number;
}

export type XmlToken =
  | { readonly kind: 'open'; readonly tag: Tag; readonly at: Stretch }
  | { readonly kind: 'close'; readonly name: string; readonly at: Stretch }
  /** Between elements, without blanks around it. */
  | { readonly kind: 'text'; readonly at: Stretch }
  | { readonly kind: 'comment' | 'other'; readonly at: Stretch };

/** The elements of a text, one after the other: nothing in them is decoded, and no depth goes on the stack. */
export function* elementTokens(text: string): Generator<XmlToken> {
  let at = 0;
  while (at < text.length) {
    const open = nextOpen(text, at);
    const end = open < 0 ? text.length : open;
    const [saidFrom, saidTo] = trimmedOfSpace(text, at, end);
    if (saidFrom < saidTo) yield { kind: 'text', at: { start: saidFrom, end: saidTo } };
    if (open < 0) return;
    const token = tokenAt(text, open);
    yield token;
    at = token.at.end;
  }
}

/** The next angle that begins an element, an end, a comment or an instruction. */
function nextOpen(text: string, from: number): number {
  let at = text.indexOf('<', from);
  while (at >= 0 && !/[\p{L}_/?!]/u.test(text[at + 1] ?? '')) at = text.indexOf('<', at + 1);
  return at;
}

function tokenAt(text: string, at: number): XmlToken {
  const endWith = (mark: string) => {
    const end = text.indexOf(mark, at);
    return { start: at, end: end < 0 ? text.length : end + mark.length };
  };
  if (text.startsWith('<!--', at)) return { kind: 'comment', at: endWith('-->') };
  if (text.startsWith('<?', at)) return { kind: 'other', at: endWith('?>') };
  if (text.startsWith('<![CDATA[', at)) return { kind: 'text', at: endWith(']]>') };
  if (text.startsWith('<!', at)) return { kind: 'other', at: endWith('>') };
  if (text.startsWith('</', at)) {
    const whole = endWith('>');
    return { kind: 'close', name: text.slice(at + 2, whole.end - 1).trim(), at: whole };
  }
  const tag = tagAt(text, at);
  return { kind: 'open', tag, at: { start: at, end: tag.end } };
}

const nameCharacter = /[^\s=/<>"']/;

function nameEnd(text: string, from: number): number {
  let end = from;
  while (end < text.length && nameCharacter.test(text[end] ?? '')) end += 1;
  return end;
}

function tagAt(text: string, start: number): Tag {
  const nameAt = { start: start + 1, end: nameEnd(text, start + 1) };
  const attributes: DocumentEntry[] = [];
  let at = nameAt.end;
  while (at < text.length && text[at] !== '>' && text[at] !== '<') {
    const end = nameEnd(text, at);
    const found = end > at ? attributeAt(text, at, end) : null;
    if (found !== null) attributes.push(found.entry);
    at = found?.end ?? Math.max(end, at + 1);
  }
  const isClosed = text[at] === '>';
  return {
    name: text.slice(nameAt.start, nameAt.end),
    nameAt,
    attributes,
    isEmpty: isClosed && text[at - 1] === '/',
    end: isClosed ? at + 1 : at,
  };
}

const longestValue = 20_000;

/** `name="value"`; null where no value in quotes follows the name. */
function attributeAt(
  text: string,
  start: number,
  end: number,
): { readonly entry: DocumentEntry; readonly end: number } | null {
  const [joint = ''] = /^\s{0,20}=\s{0,20}/.exec(text.slice(end, end + 50)) ?? [];
  const from = end + joint.length;
  const quoted = joint === '' ? null : quotedAt(text, from, Math.min(text.length, from + longestValue));
  if (quoted === null) return null;
  const entry: DocumentEntry = {
    groups: [],
    name: text.slice(start, end),
    nameAt: { start, end },
    value: inOneLine(text.slice(quoted.start, quoted.end)),
    valueAt: { start: quoted.start, end: quoted.end },
    style: { kind: 'quoted', mark: quoted.mark },
    remark: null,
  };
  return { entry, end: quoted.after };
}
