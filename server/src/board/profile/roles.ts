import type { Catalog, FoundParameter } from '../../catalog/catalog';
import type { BoardProfile } from '../../catalog/model/board-profile';
import { shortNumber } from '../../units/number-text';
import type { DecimalMark } from '../listing/number-look';
import { amountIn } from '../listing/value-look';
import { countedAlike } from '../meaning/counted-alike';
import { parameterPath } from '../meaning/parameter-path';
import { type OwnRow, ownRows, rowOfOwn } from './own-rows';

/** The parameter whose part one of a board's own settings plays: nobody knows its scale. Undefined for one without. */
export function roleOfOwn(board: BoardProfile, path: string, catalog: Catalog): FoundParameter | undefined {
  const role = rowOfOwn(board, path)?.row.setting.role;
  return role === undefined ? undefined : catalog.parameter(parameterPath({ means: role }, null));
}

/** The board's own settings that are surely counted alike, itself left out: their values tell how much more or less it is. */
export function ownLike(board: BoardProfile, path: string, catalog: Catalog): readonly OwnRow[] {
  const role = roleOfOwn(board, path, catalog);
  if (role === undefined) return [];
  const family = countedAlike(role.name, role.dimensionName);
  return ownRows(board).filter((other) => {
    if (other.row.setting.role === undefined || other.path === path) return false;
    const found = roleOfOwn(board, other.path, catalog);
    return found !== undefined && countedAlike(found.name, found.dimensionName) === family;
  });
}

/** `10 % less`, from one text of a board to another; null for what is no number, and for a change from nothing. */
export function perCentChange(before: string, after: string, mark: DecimalMark): string | null {
  const [was, is] = [amountIn(before, mark), amountIn(after, mark)];
  if (was === null || is === null || was === 0) return null;
  const change = (100 * (is - was)) / Math.abs(was);
  if (change === 0) return null;
  return `${shortNumber(Math.abs(change), 2)} % ${change > 0 ? 'more' : 'less'}`;
}
