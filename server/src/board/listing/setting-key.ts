import type { SettingKey } from './listing';

/** A key for maps: equal for equal settings, and for no others, whatever their names hold. */
export function settingKey({ groups, name, occurrence, item }: SettingKey): string {
  return JSON.stringify([item === undefined ? occurrence : [occurrence, item], name, ...groups]);
}

/** The same for a name in its groups, whichever occurrence of it. */
export function nameKey({ groups, name, item }: Omit<SettingKey, 'occurrence'>): string {
  return JSON.stringify(item === undefined ? [groups, name] : [groups, name, item]);
}
