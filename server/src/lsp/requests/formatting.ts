import type { ServerCapabilities } from 'vscode-languageserver';
import { formatting } from '../../features/formatting/formatting';
import type { Registration } from './features';
import { answering } from './request';

export const formattingCapability: ServerCapabilities = {
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
};

export function registerFormatting({ connection, session, onFault }: Registration): void {
  connection.onDocumentFormatting(
    answering(session, onFault, 'formatting', ({ snapshot }) =>
      formatting(snapshot).map((edit) => session.clientEdit(snapshot.script, edit)),
    ),
  );
  connection.onDocumentRangeFormatting(
    answering(session, onFault, 'formatting of a range', ({ snapshot }, { range }) =>
      formatting(snapshot, session.range(snapshot.script, range)).map((edit) =>
        session.clientEdit(snapshot.script, edit),
      ),
    ),
  );
}
