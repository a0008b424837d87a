import { saysNothing } from '../../language/acceptance';
import type { AcceptedBeside, UnmatchedAcceptance } from '../kept/accepted';
import { settingKey } from '../listing/setting-key';
import type { Acceptances, LayerAcceptance, LayerLine, LayerSetting } from './layer';
import { firstOn } from './places';
import type { TextRange } from './text-lines';

/** With what is kept beside the text: a setting accepts one risk, and its comment goes first. */
export function withBeside(
  inComments: Acceptances,
  beside: readonly AcceptedBeside[],
  settings: readonly LayerSetting[],
): Acceptances {
  if (beside.length === 0) return inComments;
  const acceptances = new Map(inComments);
  const places = placesOf(settings);
  for (const accepted of beside) {
    const index = places.get(settingKey(accepted.setting));
    if (index === undefined || acceptances.has(index) || saysNothing(accepted.reason.trim())) continue;
    const words = `accept ${accepted.check}: ${accepted.reason}`;
    acceptances.set(index, { words, at: null, accepted });
  }
  return acceptances;
}

/** What is kept beside the text and no line has as its own. */
export function unmatchedIn(
  beside: readonly AcceptedBeside[],
  settings: readonly LayerSetting[],
  lines: readonly LayerLine[],
): readonly UnmatchedAcceptance[] {
  if (beside.length === 0) return [];
  const places = placesOf(settings);
  const taken = new Set(
    lines.flatMap(({ acceptance }) => (acceptance?.at === null ? [acceptance.accepted] : [])),
  );
  return beside
    .filter((accepted) => !taken.has(accepted))
    .map((accepted) => {
      if (!places.has(settingKey(accepted.setting))) return { accepted, why: 'no-setting' };
      return { accepted, why: saysNothing(accepted.reason.trim()) ? 'no-reason' : 'accepts-already' };
    });
}

function placesOf(settings: readonly LayerSetting[]): ReadonlyMap<string, number> {
  return new Map(settings.map((setting, index) => [settingKey(setting), index]));
}

/** Finds acceptances: a comment is about the setting on its own line, else about the one on the next line. */
export function acceptancesIn(
  comments: readonly TextRange[],
  texts: readonly string[],
  settings: readonly LayerSetting[],
): Acceptances {
  const found = new Map<number, LayerAcceptance>();
  for (const at of comments) {
    const { line } = at.start;
    const text = (texts[line] ?? '').slice(at.start.character, at.end.character).trim();
    const start = text.search(/accept\s/i);
    // Nothing but a mark may stand before it.
    if (start < 0 || at.end.line !== line || /[\p{L}\p{N}]/u.test(text.slice(0, start))) continue;
    const index = firstOn(settings, line);
    const below = settings[index]?.at.name.start.line ?? -1;
    if (below === line || below === line + 1) found.set(index, { words: text.slice(start), at });
  }
  return found;
}
