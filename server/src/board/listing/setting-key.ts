import type { SettingKey } from './listing';

/** A key for maps: equal for equal settings, and for no others, whatever their names hold. */
export function settingKey({ groups, name, occurrence }: SettingKey): string {
  return JSON.stringify([occurrence, name, ...groups]);
}

/** The same for a name in its groups, whichever occurrence of it. */
export function nameKey({ groups, name }: Pick<SettingKey, 'groups' | 'name'>): string {
  return JSON.stringify([groups, name]);
}
