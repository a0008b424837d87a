import type { BoardLayer, LayerSetting } from '../../board/layer/layer';
import type { DocumentSymbol } from '../navigation/document-symbols';
import type { FoldingRange } from '../navigation/folding';
import type { Position, Range } from '../range';

/** The settings of a board's text under their groups, in the order of the text. */
export function boardOutline(layer: BoardLayer): readonly DocumentSymbol[] {
  return groupsIn(layer).map(({ groups, settings, range, selection }) => ({
    name: groups.length === 0 ? 'settings' : groups.join(' / '),
    detail: '',
    kind: 'section',
    range,
    selection,
    children: settings.map(settingSymbol),
  }));
}

export function boardFolding(layer: BoardLayer): readonly FoldingRange[] {
  return groupsIn(layer)
    .map(({ range: { start, end } }) => ({ first: start.line, last: end.line }))
    .filter(({ first, last }) => last > first)
    .map(({ first, last }) => ({ first, last, kind: 'section' }));
}

function settingSymbol({ name, value, at }: LayerSetting): DocumentSymbol {
  const range = around(at.name, at.value);
  return { name, detail: value, kind: 'setting', range, selection: at.name, children: [] };
}

/** Settings of one group that stand together, below its heading where it has one. */
interface GroupInText {
  readonly groups: readonly string[];
  readonly settings: LayerSetting[];
  range: Range;
  readonly selection: Range;
}

function groupsIn({ settings, headings, texts }: BoardLayer): readonly GroupInText[] {
  const found: GroupInText[] = [];
  let next = 0;
  for (const setting of settings) {
    const range = around(setting.at.name, setting.at.value);
    let heading: Range | null = null;
    for (; isBefore(headings[next]?.at.start, range.start); next += 1) heading = headings[next]?.at ?? null;
    const before = found.at(-1);
    if (before !== undefined && heading === null && isSame(before.groups, setting.groups)) {
      before.settings.push(setting);
      before.range = around(before.range, range);
    } else {
      const selection = heading ?? setting.at.name;
      found.push({ groups: setting.groups, settings: [setting], range: around(selection, range), selection });
    }
  }
  return found.map((group) => ({ ...group, range: wholeLines(group.range, texts) }));
}

function isSame(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((group, index) => group === other[index]);
}

function isBefore(one: Position | undefined, other: Position): boolean {
  return (
    one !== undefined &&
    (one.line < other.line || (one.line === other.line && one.character < other.character))
  );
}

function around(one: Range, other: Range): Range {
  return {
    start: isBefore(other.start, one.start) ? other.start : one.start,
    end: isBefore(one.end, other.end) ? other.end : one.end,
  };
}

function wholeLines({ start, end }: Range, texts: readonly string[]): Range {
  return {
    start: { line: start.line, character: 0 },
    end: { line: end.line, character: texts[end.line]?.length ?? end.character },
  };
}
