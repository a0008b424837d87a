import type { FoundParameter } from '../../catalog/catalog';
import type { Value } from '../../craft/value';
import type { Profile } from '../profile/profile';
import { meaningsOf } from './meanings';
import { Speller } from './spelling';

/**
 * What a board holds in place of a value that is handed over to it: the same, or a near one where it counts in steps.
 * Null where it refuses it; the value itself where nobody has said how the board holds such a setting.
 */
export function heldAs(profile: Profile, path: string, found: FoundParameter, value: Value): Value | null {
  const meaning = meaningsOf(profile).find(({ means }) => means === path || means === found.name);
  if (meaning === undefined) return value;
  const speller = new Speller(meaning, found, profile.manner);
  const spelled = speller.write(value);
  if (spelled.kind === 'refused') return null;
  const held = speller.read(spelled.texts);
  return held.kind === 'value' ? held.value : null;
}
