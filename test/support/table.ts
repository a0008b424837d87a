import type { ProposedColumn } from '../../server/src/recording/learn/proposed-column';
import { learnTable } from '../../server/src/recording/open-recording';
import { unhurried } from '../../server/src/recording/read/source';
import { columnText } from '../../server/src/recording/said-column';
import { shippedData } from '../unit/catalog/shipped';
import { sourceOf } from './recorded';

/** A text as a file, read in pieces of a few bytes so that every cell is cut somewhere. */
export function textSource(text: string, piece = 1 << 16) {
  return sourceOf('table.csv', new TextEncoder().encode(text), piece);
}

/** What the columns of a text are proposed to hold. */
export async function learnt(text: string): Promise<readonly ProposedColumn[]> {
  const { proposed } = await learnTable(textSource(text), [], shippedData().bundle.recordings, unhurried);
  return proposed;
}

/** What columns are taken for, a line each: `gyro x: gyro.roll, in deg/s`, with `?` behind what is asked about. */
export function takenFor(proposed: readonly ProposedColumn[]): readonly string[] {
  return proposed.map(({ column, means, asks }) => {
    const taken = columnText(means).replace(/, more is .*$/, '');
    return `${column.heading}: ${taken}${asks.some(({ keepsOut }) => keepsOut) ? ' ?' : ''}`;
  });
}
