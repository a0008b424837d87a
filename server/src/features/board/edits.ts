import type { BoardLayer, LayerSetting } from '../../board/layer/layer';
import type { DecimalMark } from '../../board/listing/number-look';
import { withDigits } from '../../board/listing/packed';
import { namesOf } from '../../board/meaning/meanings';
import { Speller } from '../../board/meaning/spelling';
import type { Catalog } from '../../catalog/catalog';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import { Document } from '../../language/document';
import type { ScriptLine } from '../../language/script-line';
import { type Range, rangeInLine, type TextEdit } from '../range';
import { type HeldOnBoard, heldAt, heldIn, partsOf } from './held';
import { headingLine, settingsLine } from './settings-line';

/**
 * Edits of the script that a board's text comes to, as edits of that text; null where the board has no words for
 * what they would do.
 */
export function boardEdits(
  layer: BoardLayer,
  catalog: Catalog,
  edits: readonly TextEdit[],
): readonly TextEdit[] | null {
  const converted: TextEdit[] = [];
  for (const edit of edits) {
    const own = edit.newText.includes('\n') ? inserted(layer, catalog, edit) : replaced(layer, catalog, edit);
    if (own === null) return null;
    converted.push(...own);
  }
  return converted.length === 0 ? null : converted;
}

/** A value that changes, in all the settings that hold it. */
function replaced(layer: BoardLayer, catalog: Catalog, { range, newText }: TextEdit): TextEdit[] | null {
  const number = range.start.line;
  const line = layer.lines[number];
  if (line === undefined) return null;
  const { acceptance, spans } = line;
  if (acceptance !== null && spans !== null && range.start.character >= spans.value.end)
    return acceptance.at === null
      ? null
      : [
          inComment(
            layer,
            acceptance.at,
            line.script.slice(range.start.character, range.end.character),
            newText,
          ),
        ];
  const held = heldIn(layer.profile, line.found);
  const parts = held === null || layer.profile === null ? [number] : partsOf(layer, layer.profile, held);
  const isWholeLine = range.end.line > number || (range.start.character === 0 && newText === '');
  // What is taken out of its text stays on the board.
  if (isWholeLine && newText === '') return null;
  if (range.end.line !== number) return null;
  const changed =
    line.script.slice(0, range.start.character) + newText + line.script.slice(range.end.character);
  const texts = held === null ? bareTexts(parsed(changed)) : spelled(layer, catalog, held, parsed(changed));
  if (texts === null) return null;
  const changes = parts.flatMap((part, index): readonly SettingChange[] => {
    const setting = layer.settings[part];
    const text = texts[index];
    const value = setting === undefined || text === undefined ? null : withoutQuotes(text, setting);
    return setting === undefined || value === null || value === setting.value ? [] : [{ setting, value }];
  });
  const [first] = changes;
  return first?.setting.packedIn === undefined
    ? changes.map(({ setting, value }) => ({ range: setting.at.value, newText: value }))
    : inNumbers(changes, layer.forms.decimal);
}

interface SettingChange {
  readonly setting: LayerSetting;
  readonly value: string;
}

/** Binary digits change in the numbers that they are of, each number once. */
function inNumbers(changes: readonly SettingChange[], mark: DecimalMark): TextEdit[] {
  const byPlace = new Map<string, SettingChange[]>();
  for (const change of changes) {
    const key = JSON.stringify(change.setting.at.value.start);
    byPlace.set(key, [...(byPlace.get(key) ?? []), change]);
  }
  return [...byPlace.values()].flatMap((digits): readonly TextEdit[] => {
    const [first] = digits;
    const { packedIn, at } = first?.setting ?? {};
    const places = digits.map(({ setting: { item = 1 }, value }) => [item - 1, value] as const);
    const newText = packedIn === undefined ? null : withDigits(packedIn, new Map(places), mark);
    return at === undefined || newText === null ? [] : [{ range: at.value, newText }];
  });
}

/** An acceptance that goes, or another word in it. */
function inComment({ texts }: BoardLayer, at: Range, old: string, newText: string): TextEdit {
  const { line } = at.start;
  const text = texts[line] ?? '';
  if (newText !== '') {
    const start = text.indexOf(old, at.start.character);
    return { range: rangeInLine(line, { start, end: start + old.length }), newText };
  }
  const before = text.slice(0, at.start.character).trimEnd().length;
  return before === 0 && line + 1 < texts.length
    ? { range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } }, newText }
    : { range: rangeInLine(line, { start: before, end: text.length }), newText };
}

/** The quotes around a value stay where they are. */
function withoutQuotes(text: string, { style }: LayerSetting): string {
  if (style.kind !== 'quoted') return text;
  const { mark } = style;
  return text.length >= 2 * mark.length && text.startsWith(mark) && text.endsWith(mark)
    ? text.slice(mark.length, text.length - mark.length)
    : text;
}

function parsed(text: string): readonly ScriptLine[] {
  return [...Document.of(text).lines()];
}

function bareTexts(lines: readonly ScriptLine[]): readonly string[] | null {
  const [line] = lines;
  const value = line?.statement.kind === 'setting' ? line.statement.value : null;
  return value?.kind === 'bare' ? [value.text] : null;
}

/** What a line of a script says, in the board's spelling. */
function spelled(
  { profile }: BoardLayer,
  catalog: Catalog,
  { meaning }: HeldOnBoard,
  lines: readonly ScriptLine[],
): readonly string[] | null {
  const line = lines.find(({ statement }) => statement.kind === 'setting');
  const path = line?.settingPath ?? null;
  const parameter = path === null ? undefined : catalog.parameter(path);
  if (profile === null || line?.statement.kind !== 'setting') return null;
  if (line.statement.value === null || parameter === undefined) return null;
  const { value } = interpret(line.statement.value, parameter, noNames, staticWords(parameter, catalog));
  if (value === null) return null;
  const text = new Speller(meaning, parameter, profile.manner).write(value);
  return text.kind === 'texts' ? text.texts : null;
}

/** Settings that are to be added: below the last line of their group, or before the closing line. */
function inserted(layer: BoardLayer, catalog: Catalog, { newText }: TextEdit): TextEdit[] | null {
  const edits: TextEdit[] = [];
  for (const line of parsed(newText)) {
    const path = line.settingPath;
    if (line.statement.kind !== 'setting' || path === null) continue;
    const added = addedSetting(layer, catalog, path, line);
    if (added === null) return null;
    edits.push(added);
  }
  return edits;
}

function addedSetting(layer: BoardLayer, catalog: Catalog, path: string, line: ScriptLine): TextEdit | null {
  const { profile, forms } = layer;
  const held = profile === null ? null : heldAt(profile, catalog, path);
  const texts = held === null ? null : spelled(layer, catalog, held, [line]);
  if (profile === null || held === null || texts === null) return null;
  const names = namesOf(profile, held.meaning, held.member) ?? [];
  const lines = names.flatMap((name, index) => settingsLine(forms, name, texts[index] ?? '') ?? []);
  const [first] = names;
  return first === undefined || lines.length < names.length ? null : placed(layer, first.groups, lines);
}

function placed(layer: BoardLayer, groups: readonly string[], added: readonly string[]): TextEdit {
  const { texts, forms, settings, headings } = layer;
  const own = JSON.stringify(groups);
  const inGroup = Math.max(
    settings.findLast((one) => JSON.stringify(one.groups) === own)?.at.value.end.line ?? -1,
    headings.findLast((one) => JSON.stringify(one.groups) === own)?.at.end.line ?? -1,
  );
  const heading = inGroup < 0 ? headingLine(forms, groups) : null;
  const at = inGroup >= 0 ? inGroup + 1 : closingLine(layer);
  const text = [...(heading === null ? [] : [heading]), ...added].map((line) => `${line}\n`).join('');
  if (at < texts.length) return { range: rangeInLine(at, { start: 0, end: 0 }), newText: text };
  const end = texts.at(-1)?.length ?? 0;
  return {
    range: rangeInLine(Math.max(0, texts.length - 1), { start: end, end }),
    newText: `\n${text.trimEnd()}`,
  };
}

/** Where the lines begin that stand below all settings; behind the text where none do. */
function closingLine({ settings, beside, texts }: BoardLayer): number {
  const last = settings.at(-1)?.at.value.end.line ?? -1;
  const below = beside.map(({ start }) => start.line).filter((line) => line > last);
  return Math.min(...below, texts.length);
}
