import { ownGroup } from '../../language/path-text';
import type { SettingKey } from './listing';

/**
 * The steps of a setting's path in a script: `own`, the groups, the name. From the second occurrence on, the last
 * step is `#2`, `#3`; of several values in one setting it is `#1.2`, `#1.3`. A name that looks like one has another
 * `#` in front, so that each path means one setting.
 */
export function ownPath({ groups, name, occurrence, item }: SettingKey): readonly string[] {
  if (item !== undefined) return [ownGroup, ...groups, name, `#${occurrence}.${item}`];
  if (occurrence > 1) return [ownGroup, ...groups, name, `#${occurrence}`];
  return [ownGroup, ...groups, looksCounted(name) ? `#${name}` : name];
}

/** The setting whose path this is; null for steps that `ownPath` never gives. */
export function settingOfOwnPath(steps: readonly string[]): SettingKey | null {
  const [first, ...rest] = steps;
  const last = rest.pop();
  if (first !== ownGroup || last === undefined) return null;
  if (!looksCounted(last)) return { groups: rest, name: last, occurrence: 1 };
  if (last.startsWith('##')) return { groups: rest, name: last.slice(1), occurrence: 1 };
  const name = rest.pop();
  const [occurrence = 0, item] = last.slice(1).split('.').map(Number);
  if (name === undefined) return null;
  if (item !== undefined)
    return last === `#${occurrence}.${item}` && occurrence > 0 && item > 0
      ? { groups: rest, name, occurrence, item }
      : null;
  return occurrence < 2 || last !== `#${occurrence}` ? null : { groups: rest, name, occurrence };
}

function looksCounted(step: string): boolean {
  return /^#+\d+(\.\d+)?$/.test(step);
}
