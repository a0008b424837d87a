import { afterBlanks, isBlank, isLetterOrDigit, quotedAt, trimmed } from '../text/characters';
import type { CompiledForms, LineForm } from './compiled';
import { firstPlace } from './match';
import { isOnlyGap, type PartRead, readPart } from './read-part';
import { readRow } from './row';
import { templateOf } from './template';

/** The settings that a line holds, by the forms of its listing; empty where it holds none. */
export function partsOfLine(forms: CompiledForms, text: string): readonly PartRead[] {
  const { table } = forms.forms;
  if (table !== undefined) {
    const row = readRow(text, table);
    return row === null ? [] : [row];
  }
  for (const between of text.length > longestOfSeveral ? [] : forms.betweens) {
    const several = severalParts(forms, text, between);
    if (several.length > 0) return several;
  }
  const [only] = onlyPart(forms.lines, forms, text, 0, text.length) ?? [];
  const isTorn =
    only !== undefined && holdsSeveral(text.slice(only.name.start, only.name.end), forms.betweens);
  return only === undefined || isTorn ? [] : [only];
}

/** A name over what parts settings belongs to several, of which one could not be read. */
function holdsSeveral(name: string, betweens: readonly string[]): boolean {
  return betweens.some((between) => between.trim() !== '' && name.includes(between.trim()));
}

/** Of several forms that fit, the one whose name ends first; those without a mark only where no other fits. */
function onlyPart(
  among: readonly LineForm[],
  { besides, mark }: CompiledForms,
  text: string,
  from: number,
  to: number,
): readonly [PartRead] | null {
  let best: PartRead | null = null;
  for (const form of among) {
    if (best !== null && isOnlyGap(form)) continue;
    const part = readPart(form, text, from, to, besides, mark);
    if (part !== null && (best === null || part.name.end < best.name.end)) best = part;
  }
  return best === null ? null : [best];
}

/** A longer line holds one setting: with many, a listing breaks its lines. */
const longestOfSeveral = 4000;
/** More pieces that are no settings make a line that is read as one. */
const mostMerged = 16;

/** The settings of a line that holds several, behind the group that leads them, if one does. */
function severalParts(forms: CompiledForms, text: string, between: string): readonly PartRead[] {
  const among = forms.lines.filter((form) => form.between === between);
  for (const { lead } of among) {
    const at = lead === null ? null : firstPlace(text, lead, 0, text.length);
    if (at === null) continue;
    const parts = partsFrom(forms, among, text, at.end, between);
    const [start, end] = trimmed(text, 0, at.start);
    if (parts.length > 0) return parts.map((part) => ({ ...part, groups: [{ start, end }, ...part.groups] }));
  }
  const parts = partsFrom(forms, among, text, 0, between);
  return parts.length > 1 ? parts : [];
}

/** Cuts a line at what parts its settings; what is none by itself belongs to the value before it. */
function partsFrom(
  forms: CompiledForms,
  among: readonly LineForm[],
  text: string,
  start: number,
  between: string,
): readonly PartRead[] {
  const parts: PartRead[] = [];
  let begin = start;
  let merged = 0;
  for (const [from, to] of piecesOf(text, start, between)) {
    const own = onlyPart(among, forms, text, from, to);
    if (own !== null) {
      parts.push(own[0]);
      begin = from;
      continue;
    }
    const last = parts.pop();
    merged += 1;
    if (last === undefined || last.style.kind === 'presence' || merged > mostMerged) return [];
    const longer = onlyPart(among, forms, text, begin, to);
    if (longer === null) return [];
    parts.push(longer[0]);
  }
  return parts;
}

type Piece = readonly [from: number, to: number];

/** The pieces of a line between marks that stand outside of quotes; empty ones are left out. */
function piecesOf(text: string, start: number, between: string): readonly Piece[] {
  const pieces: Piece[] = [];
  const add = (from: number, to: number) => {
    if (afterBlanks(text, from, to) < to) pieces.push([from, to]);
  };
  const literal = templateOf(`{name}${between}{value}`).literals[1];
  const unclosed = new Set<string>();
  let from = start;
  while (from < text.length) {
    const at = firstPlace(text, literal, from, text.length);
    const quoteEnd = at === null ? null : quoteOver(text, from, at.start, unclosed);
    const next = quoteEnd === null ? at : firstPlace(text, literal, quoteEnd - 1, text.length, true);
    if (next === null) break;
    add(from, next.start);
    from = next.end;
  }
  add(from, text.length);
  return pieces;
}

/** Where the quoted text ends that begins before `at` and goes on over it; `unclosed`: quotes that nothing closes. */
function quoteOver(text: string, from: number, at: number, unclosed: Set<string>): number | null {
  for (let place = from; place < at; place += 1) {
    const character = text[place] ?? '';
    // Within a word it is an apostrophe.
    if (isBlank(character) || isLetterOrDigit(text[place - 1]) || unclosed.has(character)) continue;
    const quoted = quotedAt(text, place);
    if (quoted === null) unclosed.add(character);
    else if (quoted.after > at) return quoted.after;
    else place = quoted.after - 1;
  }
  return null;
}
