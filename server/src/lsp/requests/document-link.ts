import type { ServerCapabilities } from 'vscode-languageserver';
import { documentLinks } from '../../features/navigation/document-links';
import type { Registration } from './features';
import { answering } from './request';

export const documentLinkCapability: ServerCapabilities = { documentLinkProvider: {} };

export function registerDocumentLinks({ connection, session, onFault }: Registration): void {
  const hasTooltips = session.client.textDocument?.documentLink?.tooltipSupport === true;
  connection.onDocumentLinks(
    answering(session, onFault, 'links', ({ snapshot }) =>
      documentLinks(snapshot).map(({ range, target, tooltip }) => ({
        range: session.clientRange(snapshot.script, range),
        target: session.clientUri(target),
        ...(hasTooltips ? { tooltip } : {}),
      })),
    ),
  );
}
