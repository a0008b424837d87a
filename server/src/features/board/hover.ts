import type { BoardLayer, LayerLine, LayerSetting } from '../../board/layer/layer';
import { settingAt } from '../../board/layer/places';
import { isOwnPath } from '../../language/path-text';
import { type Hover, hover } from '../hover/hover';
import { ownValue } from '../hover/own-text';
import { roleText } from '../hover/role-text';
import { statedBeside, statedText } from '../hover/stated-text';
import { code, escaped } from '../markdown';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { rangeInText } from './places';
import { boardWords } from './words/board-words';

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
  if (isOwnPath(line.script)) {
    const range = { start: setting.at.name.start, end: setting.at.value.end };
    return { range, markdown: ownText(setting, line, roleOf(layer, line, snapshot)).join('\n\n') };
  }
  const found = hover(snapshot, inScript);
  if (found === null) return null;
  const said = statedText(statedBeside(line.found?.row.setting, setting.stated));
  const path = line.spans === null ? null : line.script.slice(line.spans.name.start, line.spans.name.end);
  const told = boardWords(layer, snapshot.catalog).markdown(found.markdown, path);
  return {
    range: rangeInText(layer, found.range),
    markdown: said === null ? told : `${told}\n\n${said}`,
  };
}

function isOn({ at: { name, value } }: LayerSetting, { line, character }: Position): boolean {
  return [name, value].some(({ start, end }) => {
    const isBehind = line > start.line || (line === start.line && character >= start.character);
    return isBehind && (line < end.line || (line === end.line && character <= end.character));
  });
}

function roleOf({ profile }: BoardLayer, { script, spans }: LayerLine, snapshot: Snapshot): string | null {
  if (profile === null || spans === null) return null;
  const path = script.slice(spans.name.start, spans.name.end);
  return roleText(profile.board, path, snapshot.catalog, (one) => ownValue(snapshot, one));
}

function ownText(setting: LayerSetting, line: LayerLine, role: string | null): readonly string[] {
  const { groups, name, occurrence, value } = setting;
  const where = groups.length === 0 ? '' : ` · ${groups.map(escaped).join(' / ')}`;
  const which = occurrence === 1 ? '' : ` (number ${occurrence} of this name)`;
  const said = statedText(statedBeside(line.found?.row.setting, setting.stated));
  return [
    `**${escaped(name)}**${where}${which}`,
    value === '' ? '**Here:** empty' : `**Here:** ${code(value)}`,
    role ?? 'Kept as the board’s own; nobody has said what it means.',
    ...(said === null ? [] : [said]),
  ];
}
