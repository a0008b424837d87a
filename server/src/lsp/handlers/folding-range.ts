import { FoldingRangeKind, type ServerCapabilities } from 'vscode-languageserver';
import { foldingRanges } from '../../features/folding';
import type { Registration } from '../features';
import { answering } from '../request';

export const foldingRangeCapability: ServerCapabilities = { foldingRangeProvider: true };

export function registerFoldingRanges({ connection, session, onFault }: Registration): void {
  const most = session.client.textDocument?.foldingRange?.rangeLimit;
  connection.onFoldingRanges(
    answering(session, onFault, 'folding', ({ snapshot }) =>
      foldingRanges(snapshot)
        .slice(0, most)
        .map(({ first, last, kind }) => ({
          startLine: first,
          endLine: last,
          ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
        })),
    ),
  );
}
