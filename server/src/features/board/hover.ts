import type { BoardLayer, LayerLine, LayerSetting } from '../../board/layer/layer';
import { settingAt } from '../../board/layer/places';
import { type Hover, hover } from '../hover/hover';
import { code, escaped } from '../markdown';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { rangeInText } from './places';

/** What is known of the setting under a place of a board's text; its range is one of that text. */
export function boardHover(
  layer: BoardLayer,
  snapshot: Snapshot,
  inScript: Position,
  inText: Position,
): Hover | null {
  const index = settingAt(layer, inText);
  const [setting, line] = [layer.settings[index], layer.lines[index]];
  if (setting === undefined || line === undefined || !isOn(setting, inText)) return null;
  if (line.script.startsWith('own.')) {
    const range = { start: setting.at.name.start, end: setting.at.value.end };
    return { range, markdown: ownText(setting, line).join('\n\n') };
  }
  const found = hover(snapshot, inScript);
  if (found === null) return null;
  const said = statedText(setting, line);
  return {
    range: rangeInText(layer, found.range),
    markdown: said === null ? found.markdown : `${found.markdown}\n\n${said}`,
  };
}

function isOn({ at: { name, value } }: LayerSetting, { line, character }: Position): boolean {
  return [name, value].some(({ start, end }) => {
    const isBehind = line > start.line || (line === start.line && character >= start.character);
    return isBehind && (line < end.line || (line === end.line && character <= end.character));
  });
}

function ownText(setting: LayerSetting, line: LayerLine): readonly string[] {
  const { groups, name, occurrence, value } = setting;
  const where = groups.length === 0 ? '' : ` · ${groups.map(escaped).join(' / ')}`;
  const which = occurrence === 1 ? '' : ` (number ${occurrence} of this name)`;
  const said = statedText(setting, line);
  return [
    `**${escaped(name)}**${where}${which}`,
    value === '' ? '**Here:** empty' : `**Here:** ${code(value)}`,
    'Kept as the board’s own; nobody has said what it means.',
    ...(said === null ? [] : [said]),
  ];
}

/** So many words are named. */
const mostWords = 20;

/** What the listing, or the profile made of one, says beside a setting; null where it says nothing. */
function statedText({ stated }: LayerSetting, { found }: LayerLine): string | null {
  const row = found?.row.setting;
  const low = row?.range?.[0] ?? stated?.range?.low;
  const high = row?.range?.[1] ?? stated?.range?.high;
  const words = row?.words ?? stated?.words ?? [];
  const assumed = row?.default ?? stated?.default;
  const unit = row?.unit ?? stated?.unit;
  const remark = row?.remark ?? stated?.remark;
  const told = [
    ...(low === undefined || high === undefined ? [] : [`- ${code(low)} to ${code(high)}`]),
    ...(words.length === 0 ? [] : [`- one of ${listed(words)}`]),
    ...(assumed === undefined || assumed === null ? [] : [`- its default is ${code(assumed)}`]),
    ...(unit === undefined || unit === null ? [] : [`- in ${escaped(unit)}`]),
    ...(remark === undefined || remark === null ? [] : [`- “${escaped(remark)}”`]),
  ];
  return told.length === 0 ? null : ['The board’s own listing says:', ...told].join('\n');
}

function listed(words: readonly string[]): string {
  const more = words.length - mostWords;
  const shown = words.slice(0, mostWords).map(code).join(', ');
  return more > 0 ? `${shown} and ${more} more` : shown;
}
