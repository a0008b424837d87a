import type { SettingKey } from './listing';

/** A key for maps: equal for equal settings, and for no others, whatever their names hold. */
export function settingKey({ groups, name, occurrence }: SettingKey): string {
  return JSON.stringify([occurrence, name, ...groups]);
}
