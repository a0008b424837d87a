import { type Profile, profileOf } from '../../board/profile/profile';
import { type Here, withBoards } from '../files/here';
import { UsageError } from '../outcome';

/** The profile that a command names, or else the one that the script sets; it is read if it is the workspace's. */
export async function chosenProfile(
  around: Pick<Here, 'additions'>,
  named: string | undefined,
  set: string | null,
  unnamed = 'the script names no board',
): Promise<Profile> {
  const name = named ?? set;
  const known = () => around.additions.catalog.boardNames().join(', ');
  if (name === null) throw new UsageError(`${unnamed}: add --board, one of ${known()}`);
  const board = await withBoards(around, (catalog) => catalog.board(name));
  if (around.additions.catalog.isFaulty(name))
    throw new UsageError(`the profile of "${name}" has problems: propsoff check --board ${name} tells them`);
  if (board === undefined) throw new UsageError(`there is no board "${name}": ${known()}`);
  const profile = profileOf(board);
  if (profile === null)
    throw new UsageError(`the profile of "${name}" does not say how the board writes its settings`);
  return profile;
}
