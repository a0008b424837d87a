import type { KnownParameter } from '../../catalog/known-parameter';
import type { CraftView } from '../../craft/view';
import { isOwnPath } from '../../language/path-text';
import { uncapitalised } from '../../units/capitals';
import type { SettingKey } from '../listing/listing';

/** Something that a craft sets and its board is not given, or can't be held against. */
export interface LeftOut {
  /** The setting of the craft, as its script spells it. */
  readonly path: string;
  /** The board's own settings that would hold it; empty where no row of the profile stands for it. */
  readonly settings: readonly SettingKey[];
  /** What it is called in a sentence. */
  readonly title: string;
  /** null: no row of the profile stands for it. */
  readonly reason: string | null;
  readonly heldBy: KnownParameter['parameter']['heldBy'];
  /** 0: a wrong value hurts people; 1: the craft; 2: something smaller. */
  readonly urgency: 0 | 1 | 2;
  /** Whether it stands in a craft script; what stands in the board's text came from the board. */
  readonly isByHand: boolean;
}

/** What it is called in a list, with its path. */
export function leftOutName({ path, title }: LeftOut): string {
  return title === path ? path : `${uncapitalised(title)} (${path})`;
}

/** Empty for what no catalogue knows. */
export function leftOutOf(
  view: CraftView,
  path: string,
  reason: string | null,
  settings: readonly SettingKey[],
): readonly LeftOut[] {
  const setting = view.setting(path);
  if (setting === undefined) return [];
  const { parameter } = setting.found;
  const urgency = parameter.hurts.includes('people') ? 0 : parameter.hurts.includes('craft') ? 1 : 2;
  const isByHand = setting.origin.script.uri.endsWith('.craft') || setting.origin.script === view.craft.root;
  const title = isOwnPath(path) ? path : parameter.title;
  return [{ path, settings, title, reason, heldBy: parameter.heldBy, urgency, isByHand }];
}
