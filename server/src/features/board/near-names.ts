import type { BoardLayer, LayerSetting } from '../../board/layer/layer';
import { membersOf, openMember, withMember } from '../../board/profile/members';
import type { Profile } from '../../board/profile/profile';
import { suggestWord } from '../../catalog/suggest';

/** Names of the profile that a misspelt one may mean: those of its group that the text does not hold yet. */
export function nearNames(
  { profile, settings }: BoardLayer,
  { groups, name }: LayerSetting,
): readonly string[] {
  if (profile === null) return [];
  const group = JSON.stringify(groups);
  const isOwn = (one: { readonly groups: readonly string[] }) => JSON.stringify(one.groups) === group;
  const there = new Set(settings.filter(isOwn).map((one) => one.name));
  const names = profile.rows.filter(isOwn).flatMap((row) => spelled(profile, row, name));
  return suggestWord(
    names.filter((one) => !there.has(one)),
    name,
  ).slice(0, 3);
}

/** A name with each member that it may be about: those that the profile spells, or the numbers that were typed. */
function spelled(
  { board }: Profile,
  { name, setting }: Profile['rows'][number],
  typed: string,
): readonly string[] {
  if (!name.includes(openMember)) return [name];
  const members = [...(membersOf(board, setting.means)?.values() ?? [])];
  const written = members.length > 0 ? members : (typed.match(/\d+/g) ?? []);
  return written.map((member) => withMember(name, member));
}
