import type { Stretch } from '../listing';
import { afterBlanks, afterQuote, isBlank, trimmed } from '../text/characters';
import type { CompiledForms, Lead, LineForm } from './compiled';
import { firstPlace, literalAt } from './match';
import { isSurelyValue, type PartRead, readPart } from './read-part';
import { readRow, readValuesOfRow } from './row';
import { isOnlyGap, templateOf } from './template';

/** The settings that a line holds, by the forms of its listing; empty where it holds none. */
export function partsOfLine(forms: CompiledForms, text: string): readonly PartRead[] {
  const { table } = forms.forms;
  if (table?.names !== undefined) return readValuesOfRow(text, table, table.names);
  if (table !== undefined) {
    const row = readRow(text, table);
    return row === null ? [] : [row];
  }
  for (const between of text.length > longestOfSeveral ? [] : forms.betweens) {
    const among = forms.lines.filter((form) => form.between === between);
    // Where blanks part everything, a line is read by one kind of them.
    const kinds =
      between.trim() === '' ? [among.filter(isMarked), among.filter((one) => !isMarked(one))] : [among];
    for (const some of kinds) {
      const several = some.length === 0 ? [] : severalParts(forms, some, text, between);
      if (several.length > 0) return several;
    }
  }
  const [only] = onlyPart(forms.lines, forms, text, 0, text.length) ?? [];
  const isTorn =
    only !== undefined && holdsSeveral(text.slice(only.name.start, only.name.end), forms.betweens);
  return only === undefined || isTorn ? [] : [only];
}

function isMarked({ isLoose }: LineForm): boolean {
  return !isLoose;
}

/** A name over what parts settings belongs to several, of which one could not be read. */
function holdsSeveral(name: string, betweens: readonly string[]): boolean {
  return betweens.some((between) => between.trim() !== '' && name.includes(between.trim()));
}

/** Of several forms that fit, the one whose name ends first; those without a mark only where no other fits. */
function onlyPart(
  among: readonly LineForm[],
  forms: CompiledForms,
  text: string,
  from: number,
  to: number,
): readonly [PartRead] | null {
  let best: PartRead | null = null;
  let loose: PartRead | null = null;
  for (const form of among) {
    if (form.isLoose && (best ?? loose) !== null) continue;
    const part = readPart(form, text, from, to, forms);
    if (part !== null && form.isLoose) loose = part;
    else if (part !== null && (best === null || part.name.end < best.name.end)) best = part;
  }
  const part = best ?? loose;
  return part === null ? null : [part];
}

/** A longer line holds one setting: with many, a listing breaks its lines. */
const longestOfSeveral = 4000;
/** More pieces that are no settings make a line that is read as one. */
const mostMerged = 16;

/** The settings of a line that holds several, behind the group that leads them, if one does. */
function severalParts(
  forms: CompiledForms,
  among: readonly LineForm[],
  text: string,
  between: string,
): readonly PartRead[] {
  for (const form of among) {
    const led = form.lead === null ? null : leadIn(text, form, form.lead);
    if (led === null) continue;
    const parts = partsFrom(forms, among, text, led.end, between);
    if (parts.length >= leastBehind(forms, form))
      return parts.map((part) => ({ ...part, groups: [...led.groups, ...part.groups] }));
  }
  const parts = partsFrom(forms, among, text, 0, between);
  return parts.length > 1 ? parts : [];
}

/** So many settings a group leads: where others stand alone, a name of two words looks like a group and a name. */
function leastBehind({ lines }: CompiledForms, { lead }: LineForm): number {
  const isLoose = lead !== null && isOnlyGap(lead.after);
  return isLoose && lines.some((form) => form.between === null) ? 2 : 1;
}

interface Led {
  readonly groups: readonly Stretch[];
  /** Where the first setting begins. */
  readonly end: number;
}

/** The groups that lead the settings of a line; null where none do. */
function leadIn(text: string, form: LineForm, { steps, before, after }: Lead): Led | null {
  const begin = literalAt(text, before, afterBlanks(text, 0), text.length);
  if (begin < 0) return null;
  if (isOnlyGap(after) && after.before === 'blank' && !form.isLoose) return leadBeforeName(text, form, begin);
  const groups: Stretch[] = [];
  let from = begin;
  for (let step = 0; step < steps; step += 1) {
    const at = firstPlace(text, after, from, text.length);
    if (at === null) return null;
    const [start, end] = trimmed(text, from, at.start);
    groups.push({ start, end });
    from = at.end;
  }
  return { groups, end: from };
}

/** Where only a blank stands behind it: all but the last word of what stands before the first value. */
function leadBeforeName(text: string, { template }: LineForm, begin: number): Led | null {
  const at = firstPlace(text, template.literals[1], begin, text.length);
  if (at === null) return null;
  const [start, nameEnd] = trimmed(text, begin, at.start);
  let name = nameEnd;
  while (name > start && !isBlank(text[name - 1])) name -= 1;
  const [, end] = trimmed(text, start, name);
  return end > start ? { groups: [{ start, end }], end: name } : null;
}

/** Cuts a line at what parts its settings; what is none by itself belongs to the value before it. */
function partsFrom(
  forms: CompiledForms,
  among: readonly LineForm[],
  text: string,
  start: number,
  between: string,
): readonly PartRead[] {
  const pieces = piecesOf(text, start, between);
  const [loose] = among;
  if (loose?.isLoose === true && between.trim() === '') return pairsOf(forms, loose, text, pieces);
  const parts: PartRead[] = [];
  let begin = start;
  let merged = 0;
  for (const [from, to] of pieces) {
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

/** `p 47 i 30`: words that are names and values in turn, some of the values such as no name is. */
function pairsOf(
  forms: CompiledForms,
  form: LineForm,
  text: string,
  words: readonly LinePiece[],
): readonly PartRead[] {
  const said = words.map(([from, to]) => text.slice(from, to));
  const names = said.filter((_, at) => at % 2 === 0);
  const values = said.filter((_, at) => at % 2 === 1);
  const isSure = (word: string) => isSurelyValue(word, forms.mark);
  if (names.length !== values.length || names.some((name) => !isPlainName(name)) || !values.some(isSure))
    return [];
  const parts = names.flatMap((_, at) => {
    const [from = 0] = words[2 * at] ?? [];
    const [, to = 0] = words[2 * at + 1] ?? [];
    return readPart(form, text, from, to, { ...forms, besides: [] }) ?? [];
  });
  return parts.length === names.length ? parts : [];
}

/** Whether a word among others is a name and no value. */
export function isPlainName(word: string): boolean {
  return /^[\p{L}_@](?:.*[\p{L}\p{N}_\])])?$/u.test(word) && !isSurelyValue(word, '.');
}

type LinePiece = readonly [from: number, to: number];

/** The pieces of a line between marks that stand outside of quotes; empty ones are left out. */
function piecesOf(text: string, start: number, between: string): readonly LinePiece[] {
  const pieces: LinePiece[] = [];
  const add = (from: number, to: number) => {
    const piece = trimmed(text, from, to);
    if (piece[0] < piece[1]) pieces.push(piece);
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
    const after = afterQuote(text, place, unclosed);
    if (after === null) continue;
    if (after > at) return after;
    place = after - 1;
  }
  return null;
}
