import type { BoardLayer, LayerLine, LayerSetting } from '../../board/layer/layer';
import { settingAt } from '../../board/layer/places';
import { wordOfPart } from '../../board/meaning/part-parameter';
import { isOwnPath } from '../../language/path-text';
import { type Hover, hover } from '../hover/hover';
import { ownValue } from '../hover/own-text';
import { roleText } from '../hover/role-text';
import { statedBeside, statedText } from '../hover/stated-text';
import { code, escaped } from '../markdown';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { heldIn, partsOf } from './held';
import { heldPartText } from './held-part-text';
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
  if (setting.packedIn !== undefined)
    return {
      range: { start: setting.at.name.start, end: setting.at.value.end },
      markdown: packedText(layer, setting),
    };
  if (isOwnPath(line.script)) {
    const range = { start: setting.at.name.start, end: setting.at.value.end };
    return { range, markdown: ownText(setting, line, roleOf(layer, line, snapshot)).join('\n\n') };
  }
  const place = line.spans === null ? mainPlace(layer, line) : inScript;
  // Of a value that the board can't read, the script says nothing.
  const found = hover(snapshot, place) ?? hover(snapshot, { ...place, character: 0 });
  if (found === null) return null;
  const said = statedText(statedBeside(line.found?.row.setting, setting.stated));
  const main = layer.lines[place.line] ?? line;
  const path = main.spans === null ? null : main.script.slice(main.spans.name.start, main.spans.name.end);
  const part = heldPartText(line.found?.row.setting.as);
  const whole = part === null ? found.markdown : `${found.markdown}\n\n${part}`;
  const told = boardWords(layer, snapshot.catalog).markdown(whole, path);
  return {
    range: rangeInText(layer, found.range),
    markdown: said === null ? told : `${told}\n\n${said}`,
  };
}

/** A number whose binary digits are settings of their own: what each says. */
function packedText(
  { settings, lines }: BoardLayer,
  { name, groups, packedIn = '', at }: LayerSetting,
): string {
  const digits = settings.flatMap((one, index) => {
    const { line, character } = one.at.value.start;
    if (line !== at.value.start.line || character !== at.value.start.character) return [];
    const { means, as } = lines[index]?.found?.row.setting ?? {};
    const word = wordOfPart(as);
    const told = means === undefined ? 'nobody has said what it means' : code(means);
    return [
      `- bit ${(one.item ?? 1) - 1} is ${one.value}: ${told}${word === null ? '' : ` has ${code(word)}`}`,
    ];
  });
  return [titleText(name, groups), `**Here:** ${code(packedIn)}`, digits.join('\n')].join('\n\n');
}

function titleText(name: string, groups: readonly string[]): string {
  const where = groups.length === 0 ? '' : ` · ${groups.map(escaped).join(' / ')}`;
  return `**${escaped(name)}**${where}`;
}

/** Where the script says what several settings hold together: at the first of them. */
function mainPlace(layer: BoardLayer, { found }: LayerLine): Position {
  const held = heldIn(layer.profile, found);
  const parts = held === null || layer.profile === null ? [] : partsOf(layer, layer.profile, held);
  const line = parts.find((part) => layer.lines[part]?.spans !== null) ?? layer.lines.length;
  return { line, character: layer.lines[line]?.spans?.value.start ?? 0 };
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
  const which = occurrence === 1 ? '' : ` (number ${occurrence} of this name)`;
  const said = statedText(statedBeside(line.found?.row.setting, setting.stated));
  return [
    `${titleText(name, groups)}${which}`,
    value === '' ? '**Here:** empty' : `**Here:** ${code(value)}`,
    role ?? 'Kept as the board’s own; nobody has said what it means.',
    ...(said === null ? [] : [said]),
  ];
}
