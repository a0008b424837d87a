import type { Forms } from '../../catalog/model/board-forms';
import type { ListedSetting } from '../listing/listing';
import { readListing } from '../listing/read-listing';
import { promptOf } from '../listing/text/prompts';
import { type BoardLayer, type LayerSetting, statedAnywhere } from './layer';
import { firstOn } from './places';

/**
 * The settings of a line whose names or values changed and nothing else, with their places among all; null where that can't
 * be told from the line alone. It can where the line as it was says alone what it said among the others.
 */
export function patchedSettings(
  { settings, texts, breaksAt }: BoardLayer,
  number: number,
  text: string,
  forms: Forms,
): ReadonlyMap<number, LayerSetting> | null {
  if (forms.container !== 'lines' || forms.continued !== undefined || forms.indent === 'continues')
    return null;
  // What could not be read may be the rest of a broken line, as long as the longest one: a shorter one changes nothing.
  const longest = Math.max(text.length, texts[number]?.length ?? 0);
  if (breaksAt !== null && longest >= breaksAt) return null;
  // What else begins so tells whether it is a prompt.
  if (promptOf(text) !== promptOf(texts[number] ?? '')) return null;
  const first = firstOn(settings, number);
  const known = settingsOn(settings, first, number);
  const before = aloneOn(texts[number] ?? '', forms);
  const after = aloneOn(text, forms);
  if (before === null || after === null || known.length === 0) return null;
  if (known.some(({ item }) => item !== undefined)) return null;
  if (before.length !== known.length || after.length !== known.length) return null;
  const patched = new Map<number, LayerSetting>();
  for (const [index, setting] of known.entries()) {
    const [old, now] = [before[index], after[index]];
    if (old === undefined || now === undefined || !isAs(setting, old)) return null;
    // How far a line is indented may say which group it is in, and its name be the group of those further in.
    const isPlaced = old.at.name.start === now.at.name.start && old.name === now.name;
    if (forms.indent === 'groups' && !isPlaced) return null;
    if (!isUnderSame(old, now) || !canBeCalled(settings, setting, now.name)) return null;
    patched.set(first + index, {
      ...setting,
      name: now.name,
      value: now.value,
      style: now.style,
      stated: statedAnywhere(now.stated),
      at: { name: inLine(number, now.at.name), value: inLine(number, now.at.value) },
    });
  }
  return patched;
}

/** The settings of a line that stands alone; null where something else stands there, or the line's start is cut off. */
function aloneOn(text: string, forms: Forms): readonly ListedSetting[] | null {
  const { settings, left, headings, comments, openings, closings, echoes, refused } = readListing(
    text,
    forms,
  );
  const others = [left, headings, comments, openings, closings, echoes];
  return refused !== null || others.some((one) => one.length > 0) ? null : settings;
}

function isAs({ groups, name, value, at, stated }: LayerSetting, alone: ListedSetting): boolean {
  const own = groups.slice(groups.length - alone.groups.length);
  return (
    name === alone.name &&
    value === alone.value &&
    at.name.start.character === alone.at.name.start &&
    at.value.start.character === alone.at.value.start &&
    // A remark may go on in the next line.
    JSON.stringify(stated) === JSON.stringify(statedAnywhere(alone.stated)) &&
    own.every((group, index) => group === alone.groups[index])
  );
}

function isUnderSame(one: ListedSetting, other: ListedSetting): boolean {
  return JSON.stringify(one.groups) === JSON.stringify(other.groups);
}

/** Whether a name is nobody else's, and was not: then nothing is counted anew. */
function canBeCalled(
  settings: readonly LayerSetting[],
  { groups, name: before }: LayerSetting,
  name: string,
): boolean {
  if (name === before) return true;
  const own = JSON.stringify(groups);
  const named = settings.filter((one) => one.name === name || one.name === before);
  return named.filter((one) => JSON.stringify(one.groups) === own).length === 1;
}

function inLine(line: number, { start, end }: { readonly start: number; readonly end: number }) {
  return { start: { line, character: start }, end: { line, character: end } };
}

function settingsOn(settings: readonly LayerSetting[], first: number, line: number): readonly LayerSetting[] {
  let end = first;
  while (settings[end] !== undefined && (settings[end]?.at.name.start.line ?? 0) <= line) end += 1;
  const on = settings.slice(first, end);
  // One that goes on over lines is read with all of them.
  return on.every(({ at }) => at.name.start.line === line && at.value.end.line === line) ? on : [];
}
