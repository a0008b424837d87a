import type { BoardLayer } from '../board/layer/layer';
import { breakCheck, overridingBreak } from '../board/layer/stated-breaks';
import { settingOfOwnPath } from '../board/listing/own-path';
import { settingKey } from '../board/listing/setting-key';
import type { Finding } from '../checks/report/finding';
import type { Craft } from '../craft/craft';
import { bareLiteral } from '../language/own-line';
import { isOwnPath, ownGroup, stepsOf } from '../language/path-text';
import type { ScriptLine } from '../language/script-line';

/** Values that a script gives settings of the board's text that it includes, and that the text's own listing rules out. */
export function overriddenText(craft: Craft, layer: BoardLayer): readonly Finding[] {
  const { root } = craft;
  if (root.isBoardText || !root.hasGroup(ownGroup)) return [];
  const places = placesIn(layer);
  return [...root.document.lines()].flatMap((line) => findingOf(craft, layer, line, places) ?? []);
}

type LineOfSetting = ReadonlyMap<string, number>;
const kept = new WeakMap<BoardLayer, LineOfSetting>();

/** Where each setting stands among those of its text. */
function placesIn(layer: BoardLayer): LineOfSetting {
  const known = kept.get(layer);
  if (known !== undefined) return known;
  const places = new Map(layer.settings.map((setting, index) => [settingKey(setting), index]));
  kept.set(layer, places);
  return places;
}

function findingOf(craft: Craft, layer: BoardLayer, line: ScriptLine, places: LineOfSetting): Finding | null {
  const { settingPath: path, statement } = line;
  if (path === null || !isOwnPath(path) || statement.kind !== 'setting') return null;
  const { value } = statement;
  const key = settingOfOwnPath(stepsOf(path));
  const index = key === null ? undefined : places.get(settingKey(key));
  if (key === null || index === undefined || value?.kind !== 'bare') return null;
  const broken = overridingBreak(layer, index, value.text);
  if (broken === null) return null;
  const { id, values } = breakCheck(broken, key.name, value.text);
  const check = craft.catalog.check(id);
  if (check === undefined) return null;
  const place = { script: craft.root, line, start: value.start, end: value.end };
  return {
    check,
    level: check.level,
    values,
    place,
    related: [],
    pack: null,
    fixes: broken.near.map((near) => ({
      title: 'Write {to}',
      values: { to: near },
      set: null,
      edits: [{ place, newText: bareLiteral(near) }],
    })),
    accepted: null,
  };
}
