import { type Profile, profileOf } from '../../board/profile/profile';
import type { Catalog } from '../../catalog/catalog';
import { UsageError } from '../outcome';

/** The profile that a command names, or else the one that the script sets. */
export function chosenProfile(
  catalog: Catalog,
  named: string | undefined,
  set: string | null,
  unnamed = 'the script names no board',
): Profile {
  const name = named ?? set;
  const known = [...catalog.boards.keys()].join(', ');
  if (name === null) throw new UsageError(`${unnamed}: add --board, one of ${known}`);
  const board = catalog.board(name);
  if (board === undefined) throw new UsageError(`there is no board "${name}": ${known}`);
  const profile = profileOf(board);
  if (profile === null)
    throw new UsageError(`the profile of "${name}" does not say how the board writes its settings`);
  return profile;
}
