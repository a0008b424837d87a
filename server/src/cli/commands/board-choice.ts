import { type Profile, profileOf } from '../../board/profile/profile';
import type { BoardProfile } from '../../catalog/model/board-profile';
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
  if (name === null) throw new UsageError(`${unnamed}: add --board, one of ${known(around)}`);
  const board = await namedBoard(around, name);
  if (board === null)
    throw new UsageError(`the profile of "${name}" has problems: propsoff check --board ${name} tells them`);
  const profile = profileOf(board);
  if (profile === null)
    throw new UsageError(`the profile of "${name}" does not say how the board writes its settings`);
  return profile;
}

/** A board by its name, read if it is the workspace's; null for one whose profile has faults. */
export async function namedBoard(
  around: Pick<Here, 'additions'>,
  name: string,
): Promise<BoardProfile | null> {
  const board = await withBoards(around, (catalog) => catalog.board(name));
  if (board !== undefined) return board;
  if (around.additions.catalog.isFaulty(name)) return null;
  throw new UsageError(`there is no board "${name}": ${known(around)}`);
}

function known({ additions }: Pick<Here, 'additions'>): string {
  return additions.catalog.boardNames().join(', ');
}
