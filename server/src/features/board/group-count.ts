import type { SettingKey } from '../../board/listing/listing';

/** In how many groups the settings of a listing stand. */
export function groupCount(settings: readonly Pick<SettingKey, 'groups'>[]): number {
  return new Set(settings.map(({ groups }) => JSON.stringify(groups))).size;
}
