import { FoldingRangeKind, type ServerCapabilities } from 'vscode-languageserver';
import { boardFolding } from '../../features/board/outline';
import { type FoldingRange, foldingRanges } from '../../features/navigation/folding';
import type { Registration } from './features';
import { answering } from './request';

export const foldingRangeCapability: ServerCapabilities = { foldingRangeProvider: true };

export function registerFoldingRanges({ connection, session, onFault }: Registration): void {
  const most = session.client.textDocument?.foldingRange?.rangeLimit;
  const shown = (ranges: readonly FoldingRange[]) =>
    ranges.slice(0, most).map(({ first, last, kind }) => ({
      startLine: first,
      endLine: last,
      ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
    }));
  connection.onFoldingRanges(
    answering(
      session,
      onFault,
      'folding',
      ({ snapshot }) => shown(foldingRanges(snapshot)),
      ({ translation }) => shown(boardFolding(translation)),
    ),
  );
}
