import type { SettingKey } from '../listing/listing';

/** One text for each setting of a board, whatever its names hold. */
export function keyOfSetting({ groups, name, occurrence }: SettingKey): string {
  return JSON.stringify([groups, name, occurrence]);
}
