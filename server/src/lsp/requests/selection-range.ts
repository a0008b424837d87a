import type { SelectionRange, ServerCapabilities } from 'vscode-languageserver';
import { selectionRanges } from '../../features/navigation/selection-range';
import type { Registration } from './features';
import { answering, type Context } from './request';

export const selectionRangeCapability: ServerCapabilities = { selectionRangeProvider: true };

export function registerSelectionRanges({ connection, session, onFault }: Registration): void {
  connection.onSelectionRanges(
    answering(session, onFault, 'selection ranges', (context, { positions }) =>
      positions.map((position) => chain(context, position)),
    ),
  );
}

/** The smallest range, with each larger one as the parent of the one before. */
function chain({ session, snapshot: { script } }: Context, position: SelectionRange['range']['start']) {
  const ranges = selectionRanges({ script }, session.position(script, position));
  const link = (parent: SelectionRange | undefined, range: (typeof ranges)[number]): SelectionRange => {
    const own = session.clientRange(script, range);
    return parent === undefined ? { range: own } : { range: own, parent };
  };
  return (
    ranges.reduceRight<SelectionRange | undefined>(link, undefined) ?? {
      range: { start: position, end: position },
    }
  );
}
