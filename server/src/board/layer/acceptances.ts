import type { Acceptances, CommentedAcceptance, LayerSetting } from './layer';
import { firstOn } from './places';
import type { TextRange } from './text-lines';

/** Finds acceptances: a comment is about the setting on its own line, else about the one on the next line. */
export function acceptancesIn(
  comments: readonly TextRange[],
  texts: readonly string[],
  settings: readonly LayerSetting[],
): Acceptances {
  const found = new Map<number, CommentedAcceptance>();
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
