import type { BoardLayer, LayerSetting } from './layer';

/** Where a text ends, or begins, within what its profile lists. */
export interface CutShort {
  /** The setting beside which the others are missing. */
  readonly beside: LayerSetting;
  readonly is: 'end' | 'beginning';
  readonly count: number;
  /** The name of the first that is missing. */
  readonly first: string;
}

/** Fewer settings at the beginning of a profile are what somebody chose to write; fewer missing may be another version's. */
const least = { there: 10, missing: 4 };

/**
 * Settings of the profile that are missing all at one end, while all others are there: so a text looks of which a part
 * was pasted. Null of any other text, and of a board that lists only what differs from its defaults.
 */
export function cutShort({ profile, settings, lines }: BoardLayer): CutShort | null {
  if (profile === null || profile.board.text?.omitsDefaults === true) return null;
  const rows = profile.board.settings;
  const seen = new Set(lines.flatMap(({ found }) => found?.row.index ?? []));
  const missing = rows.length - seen.size;
  if (seen.size < least.there || missing < least.missing) return null;
  const [low, high] = [Math.min(...seen), Math.max(...seen)];
  const [first, last] = [settings[0], settings.at(-1)];
  if (high - low + 1 !== seen.size || first === undefined || last === undefined) return null;
  const name = (index: number) => rows[index]?.name ?? '';
  if (low === 0) return { beside: last, is: 'end', count: missing, first: name(high + 1) };
  return high === rows.length - 1 ? { beside: first, is: 'beginning', count: missing, first: name(0) } : null;
}
