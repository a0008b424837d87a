import { suggestWord } from '../../catalog/suggest';
import type { DecimalMark } from '../listing/number-look';
import { settingKey } from '../listing/setting-key';
import { isAsStated, type StatedOf } from './as-stated';
import type { BoardLayer, LayerLine, LayerSetting } from './layer';

/** A value that is not what is stated of it. */
export interface StatedBreak {
  /** The place of its setting. */
  readonly index: number;
  readonly stated: StatedOf;
  /** What was surely meant first; none where nothing is near. */
  readonly near: readonly string[];
}

/** What breaks its statement, and what does so although it stands as the board printed it: there the statement is doubted. */
export interface StatedBreaks {
  readonly broken: readonly StatedBreak[];
  readonly doubted: readonly StatedBreak[];
}

/**
 * Compares values with what their listing or the profile states. A profile keeps no statement that its own capture
 * broke, so whatever breaks one of its is new. Without a profile, what stood there when the text was opened is taken
 * for the board's own.
 */
export function statedBreaks(layer: BoardLayer): StatedBreaks {
  const broken: StatedBreak[] = [];
  const doubted: StatedBreak[] = [];
  for (const [index, line] of layer.lines.entries()) {
    const setting = layer.settings[index];
    if (setting === undefined) continue;
    const known = breakOf(setting, line, layer.forms.decimal);
    if (known === null) continue;
    (isDoubted(layer, setting, line) ? doubted : broken).push({ index, ...known });
  }
  return { broken, doubted };
}

function isDoubted({ profile, asOpened }: BoardLayer, setting: LayerSetting, { found }: LayerLine): boolean {
  if (profile === null) return asOpened?.get(settingKey(setting)) === setting.value;
  // What only the listing states of a setting that the profile lists was broken by the capture already.
  const row = found?.row.setting;
  return row !== undefined && row.range === undefined && row.words === undefined;
}

/**
 * What a script says of a setting in place of the text, where that breaks its statement; null where it does not, or
 * where the value that stands in the text does, so that the statement is doubted.
 */
export function overridingBreak(layer: BoardLayer, index: number, value: string): StatedBreak | null {
  const setting = layer.settings[index];
  const line = layer.lines[index];
  const stated = setting === undefined || line === undefined ? null : statedOf(setting, line);
  if (setting === undefined || line === undefined || stated === null) return null;
  const mark = layer.forms.decimal;
  if (isAsStated(value, stated, mark)) return null;
  const isDoubtful = !isAsStated(setting.value, stated, mark) && isDoubted(layer, setting, line);
  return isDoubtful ? null : { index, stated, near: nearOf({ ...setting, value }, stated) };
}

/** The check that tells of a break, with what its sentence is made of. */
export function breakCheck(
  { stated: { range, words }, near }: StatedBreak,
  name: string,
  given: string,
): { readonly id: string; readonly values: Readonly<Record<string, string>> } {
  const values = { name, given, words: listed(words ?? []), meant: near[0] ?? '' };
  return range === null
    ? { id: 'board/word-unlisted', values }
    : { id: 'board/outside-stated', values: { ...values, ...range } };
}

/** So many words are named. */
const mostWords = 12;

function listed(words: readonly string[]): string {
  const more = words.length - mostWords;
  return more > 0 ? `${words.slice(0, mostWords).join(', ')} and ${more} more` : words.join(', ');
}

type KnownBreak = Omit<StatedBreak, 'index'> | null;
const checked = new WeakMap<LayerLine, { readonly setting: LayerSetting; readonly known: KnownBreak }>();

/** Most edits leave most settings as they were. */
function breakOf(setting: LayerSetting, line: LayerLine, mark: DecimalMark): KnownBreak {
  const before = checked.get(line);
  if (before?.setting === setting) return before.known;
  const stated = statedOf(setting, line);
  const known =
    stated === null || isAsStated(setting.value, stated, mark)
      ? null
      : { stated, near: nearOf(setting, stated) };
  checked.set(line, { setting, known });
  return known;
}

/** The profile's statement, else the listing's own; null where nothing is stated. */
function statedOf({ stated }: LayerSetting, { found }: LayerLine): StatedOf | null {
  const row = found?.row.setting;
  const range =
    row?.range === undefined ? (stated?.range ?? null) : { low: row.range[0], high: row.range[1] };
  const words = row?.words ?? stated?.words ?? null;
  return range === null && words === null ? null : { range, words };
}

function nearOf({ value }: LayerSetting, { words }: StatedOf): readonly string[] {
  return words === null ? [] : suggestWord(words, value).slice(0, 3);
}
