import { DocumentHighlightKind, type ServerCapabilities } from 'vscode-languageserver';
import { highlights } from '../../features/navigation/highlights';
import type { Registration } from './features';
import { answering } from './request';

export const documentHighlightCapability: ServerCapabilities = { documentHighlightProvider: true };

export function registerDocumentHighlights({ connection, session, onFault }: Registration): void {
  connection.onDocumentHighlight(
    answering(session, onFault, 'highlights', ({ snapshot }, { position }) =>
      highlights(snapshot, session.position(snapshot.script, position)).map(({ range, kind }) => ({
        range: session.clientRange(snapshot.script, range),
        kind: kind === 'write' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
      })),
    ),
  );
}
