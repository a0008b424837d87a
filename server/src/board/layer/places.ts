import type { BoardLayer, LayerSetting } from './layer';
import type { TextPlace, TextRange } from './text-lines';

/** The place of the setting that stands at a place of the text, in its name, its value or between; -1: none. */
export function settingAt({ settings }: BoardLayer, place: TextPlace): number {
  const first = firstOn(settings, place.line);
  let found = -1;
  for (let index = first; index < settings.length; index += 1) {
    const setting = settings[index];
    if (setting === undefined || setting.at.name.start.line > place.line) break;
    // Of several on a line, the last one that begins before the place; the first digit stands for the number of all.
    if (found < 0 || !(isLaterDigit(setting) || isBefore(place, startOf(setting)))) found = index;
  }
  return found;
}

/** Where the first setting stands whose value ends on a line or below it. */
export function firstOn(settings: readonly LayerSetting[], line: number): number {
  let [low, high] = [0, settings.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((settings[middle]?.at.value.end.line ?? 0) < line) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A place of the text in the layer's script. The script's last line stands for none of the text's. */
export function placeInScript(layer: BoardLayer, place: TextPlace): TextPlace {
  const index = settingAt(layer, place);
  const setting = layer.settings[index];
  const spans = layer.lines[index]?.spans;
  if (setting === undefined) return { line: layer.lines.length, character: 0 };
  if (spans === null || spans === undefined) return { line: index, character: 0 };
  const { name, value } = setting.at;
  if (isWithin(place, name)) {
    const into = place.line === name.start.line ? place.character - name.start.character : 0;
    return { line: index, character: Math.min(into, spans.name.end) };
  }
  if (isBefore(place, value.start)) return { line: index, character: spans.name.end };
  const into = place.line === value.start.line ? place.character - value.start.character : spans.value.end;
  return { line: index, character: Math.min(spans.value.start + into, spans.value.end) };
}

/** A range of the layer's script in the text: a name, a value, or from one to the other. */
export function rangeOfScript(layer: BoardLayer, start: TextPlace, end: TextPlace): TextRange {
  const [from, to] = [fieldAt(layer, start, false), fieldAt(layer, end, true)];
  if (from === null || to === null) return { start: top, end: top };
  const range = { start: from.start, end: to.end };
  return isBefore(range.end, range.start) ? { start: range.end, end: range.start } : range;
}

const top: TextPlace = { line: 0, character: 0 };

function fieldAt(
  { settings, lines }: BoardLayer,
  { line, character }: TextPlace,
  isEnd: boolean,
): TextRange | null {
  const setting = settings[line];
  const { spans, acceptance } = lines[line] ?? {};
  if (setting === undefined) return null;
  if (spans === null || spans === undefined) return outer(setting);
  // The comment stands behind the value, with a blank and a mark.
  const comment = acceptance?.at ?? null;
  if (comment !== null && character > spans.value.end) return comment;
  return character < spans.value.start && !(isEnd && character > spans.name.end)
    ? setting.at.name
    : setting.at.value;
}

function outer({ at: { name, value } }: LayerSetting): TextRange {
  return isBefore(value.start, name.start)
    ? { start: value.start, end: name.end }
    : { start: name.start, end: value.end };
}

/** Of several values that share a name, the first has it. */
function startOf(setting: LayerSetting): TextPlace {
  return (setting.item ?? 1) > 1 ? setting.at.value.start : outer(setting).start;
}

function isLaterDigit({ packedIn, item = 1 }: LayerSetting): boolean {
  return packedIn !== undefined && item > 1;
}

function isWithin(place: TextPlace, { start, end }: TextRange): boolean {
  return !isBefore(place, start) && !isBefore(end, place);
}

export function isBefore(one: TextPlace, other: TextPlace): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
