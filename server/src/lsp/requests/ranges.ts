import type {
  FoldingRange as ClientFoldingRange,
  Position as ClientPosition,
  SelectionRange,
  SelectionRangeParams,
} from 'vscode-languageserver';
import { boardAnswers } from '../../features/board/answers';
import { type FoldingRange, foldingRanges } from '../../features/navigation/folding';
import { selectionRanges } from '../../features/navigation/selection-range';
import { FoldingRangeKind } from '../library';
import type { Session } from '../session';
import type { BoardContext, ScriptContext } from './about-script';

export function scriptFolding({ session, snapshot }: ScriptContext): ClientFoldingRange[] {
  return clientFolding(session, foldingRanges(snapshot));
}

export function boardTextFolding({ session, layer }: BoardContext): ClientFoldingRange[] {
  return clientFolding(session, boardAnswers().boardFolding(layer));
}

function clientFolding({ client }: Session, ranges: readonly FoldingRange[]): ClientFoldingRange[] {
  return ranges.slice(0, client.mostFolds).map(({ first, last, kind }) => ({
    startLine: first,
    endLine: last,
    ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
  }));
}

export function selectionsAt(context: ScriptContext, { positions }: SelectionRangeParams): SelectionRange[] {
  return positions.map((position) => chain(context, position));
}

/** The smallest range, with each larger one as the parent of the one before. */
function chain({ session, snapshot: { script } }: ScriptContext, position: ClientPosition): SelectionRange {
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
