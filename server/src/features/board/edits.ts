import { type LineForm, lineFormOf } from '../../board/line-form';
import { type Meaning, meaningOf, meaningsOf, namesOf } from '../../board/meaning/meanings';
import { Speller } from '../../board/meaning/spelling';
import { keyOf, oneGroup } from '../../board/one-group';
import type { Profile, RowFound } from '../../board/profile/profile';
import { fill } from '../../board/template';
import type { Translation } from '../../board/translation';
import type { Catalog } from '../../catalog/catalog';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import { Document } from '../../language/document';
import type { ScriptLine } from '../../language/script-line';
import { rangeInLine, type TextEdit } from '../range';

/**
 * Edits of the script that a board's text was translated to, as edits of that text; null where the board has no
 * words for what they would do.
 */
export function boardEdits(
  translation: Translation,
  catalog: Catalog,
  edits: readonly TextEdit[],
): readonly TextEdit[] | null {
  const converted: TextEdit[] = [];
  for (const edit of edits) {
    const own = edit.newText.includes('\n')
      ? inserted(translation, catalog, edit)
      : replaced(translation, catalog, edit);
    if (own === null) return null;
    converted.push(...own);
  }
  return converted.length === 0 ? null : converted;
}

/** A value that changes, in all the settings that hold it; or a line that goes. */
function replaced(
  translation: Translation,
  catalog: Catalog,
  { range, newText }: TextEdit,
): TextEdit[] | null {
  const number = range.start.line;
  const line = translation.lines[number];
  if (line === undefined || line.line.kind !== 'setting' || line.line.found === undefined) return null;
  const isWholeLine = range.end.line > number || (range.start.character === 0 && newText === '');
  const held = heldBy(translation.profile, line.line.found);
  if (held === null) return null;
  const parts = partsOf(translation, held);
  if (isWholeLine && newText === '') return parts.map((part) => lineOut(translation, part));
  if (range.end.line !== number) return null;
  const changed =
    line.script.slice(0, range.start.character) + newText + line.script.slice(range.end.character);
  const texts = spelled(translation, catalog, held.meaning, parsed(changed));
  if (texts === null) return null;
  return parts.flatMap((part, index) => {
    const setting = translation.lines[part]?.line;
    const text = texts[index];
    if (setting?.kind !== 'setting' || text === undefined || text === setting.value.text) return [];
    return [{ range: rangeInLine(part, setting.value), newText: text }];
  });
}

/** A parameter with the member of its collection. */
interface Held {
  readonly meaning: Meaning;
  readonly member: string | null;
}

function heldBy(profile: Profile, { row, member }: RowFound): Held | null {
  const meaning = meaningOf(profile, row);
  return meaning === undefined ? null : { meaning, member };
}

/** The lines of all the settings that a parameter is held in, in the order of its names. */
function partsOf({ lines, profile }: Translation, { meaning, member }: Held): readonly number[] {
  const keys = (namesOf(profile, meaning, member) ?? []).map(({ groups, name }) =>
    keyOf(oneGroup(groups), name),
  );
  return keys.flatMap((key) => {
    const at = lines.findLastIndex(
      ({ line }) => line.kind === 'setting' && keyOf(line.group, line.name.text) === key,
    );
    return at < 0 ? [] : [at];
  });
}

function lineOut({ lines }: Translation, number: number): TextEdit {
  const isLast = number === lines.length - 1;
  const end = isLast
    ? { line: number, character: lines[number]?.text.length ?? 0 }
    : { line: number + 1, character: 0 };
  return { range: { start: { line: number, character: 0 }, end }, newText: '' };
}

function parsed(text: string): readonly ScriptLine[] {
  return [...Document.of(text).lines()];
}

/** What a line of a script says, in the board's spelling. */
function spelled(
  { profile }: Translation,
  catalog: Catalog,
  meaning: Meaning,
  lines: readonly ScriptLine[],
): readonly string[] | null {
  const line = lines.find(({ statement }) => statement.kind === 'setting');
  const path = line?.settingPath ?? null;
  const parameter = path === null ? undefined : catalog.parameter(path);
  if (line?.statement.kind !== 'setting' || line.statement.value === null || parameter === undefined)
    return null;
  const { value } = interpret(line.statement.value, parameter, noNames, staticWords(parameter, catalog));
  if (value === null) return null;
  const text = new Speller(meaning, parameter, profile.manner).write(value);
  return text.kind === 'texts' ? text.texts : null;
}

/** Settings that are to be added: below the last line of their group, or before the closing line. */
function inserted(translation: Translation, catalog: Catalog, { newText }: TextEdit): TextEdit[] | null {
  const { profile } = translation;
  const form = lineFormOf(profile);
  if (form === null) return null;
  const edits: TextEdit[] = [];
  for (const line of parsed(newText)) {
    const path = line.settingPath;
    if (line.statement.kind !== 'setting' || path === null) continue;
    const held = heldAt(translation, catalog, path);
    const texts = held === null ? null : spelled(translation, catalog, held.meaning, [line]);
    if (held === null || texts === null) return null;
    const names = namesOf(profile, held.meaning, held.member) ?? [];
    const lines = names.map(({ groups, name }, index) =>
      fill(form.line, { group: oneGroup(groups), name, value: texts[index] ?? '', index: '1' }),
    );
    edits.push(placed(translation, form, oneGroup(names[0]?.groups ?? []), lines));
  }
  return edits;
}

function heldAt({ profile }: Translation, catalog: Catalog, path: string): Held | null {
  const parameter = catalog.parameter(path);
  if (parameter === undefined) return null;
  const own = meaningsOf(profile).find(({ means }) => means === path || means === parameter.name);
  if (own === undefined) return null;
  const isOfMember = own.means === parameter.name && !parameter.name.startsWith('pack.');
  return { meaning: own, member: isOfMember ? (parameter.keys[0] ?? null) : null };
}

function placed({ lines }: Translation, form: LineForm, group: string, added: readonly string[]): TextEdit {
  const inGroup = lines.findLastIndex(
    (line) => line.group === group && (line.line.kind === 'setting' || line.line.kind === 'heading'),
  );
  const closing = lines.findIndex(({ line }) => line.kind === 'closing');
  const heading = inGroup < 0 && form.heading !== null ? [fill(form.heading, { group })] : [];
  const at = inGroup >= 0 ? inGroup + 1 : closing >= 0 ? closing : lines.length;
  const text = [...heading, ...added].map((line) => `${line}\n`).join('');
  if (at < lines.length) return { range: rangeInLine(at, { start: 0, end: 0 }), newText: text };
  const end = lines.at(-1)?.text.length ?? 0;
  return {
    range: rangeInLine(Math.max(0, lines.length - 1), { start: end, end }),
    newText: `\n${text.trimEnd()}`,
  };
}
