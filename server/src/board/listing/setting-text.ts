import type { SettingKey } from './listing';

/** What a board's setting is called in a sentence: its groups and its name, and which of several it is. */
export function settingText({ groups, name, occurrence, item }: SettingKey): string {
  const which = occurrence === 1 ? '' : ` (${occurrence})`;
  const value = item === undefined ? '' : `, value ${item}`;
  return [...groups, name].join(' ') + which + value;
}
