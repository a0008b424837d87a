import { MarkupKind, type ServerCapabilities } from 'vscode-languageserver';
import { hover } from '../../features/hover/hover';
import { markup } from '../convert/markup';
import type { Registration } from './features';
import { answering } from './request';

export const hoverCapability: ServerCapabilities = { hoverProvider: true };

export function registerHover({ connection, session, onFault }: Registration): void {
  const formats = session.client.textDocument?.hover?.contentFormat ?? [MarkupKind.PlainText];
  connection.onHover(
    answering(
      session,
      onFault,
      'hover',
      ({ snapshot }, { position }) => {
        const found = hover(snapshot, session.position(snapshot.script, position));
        if (found === null) return null;
        return {
          contents: markup(found.markdown, formats),
          range: session.clientRange(snapshot.script, found.range),
        };
      },
      'same',
    ),
  );
}
