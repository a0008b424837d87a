import { InlayHintKind, type ServerCapabilities } from 'vscode-languageserver';
import { inlayHints } from '../../features/inlay-hints';
import type { Registration } from './features';
import { answering } from './request';

export const inlayHintCapability: ServerCapabilities = { inlayHintProvider: true };

export function registerInlayHints({ connection, session, onFault }: Registration): void {
  connection.languages.inlayHint.on(
    answering(
      session,
      onFault,
      'inlay hints',
      ({ snapshot }, { range }) =>
        inlayHints(snapshot, session.range(snapshot.script, range)).map(({ position, label, tooltip }) => ({
          position: session.clientPosition(snapshot.script, position),
          label,
          tooltip,
          kind: InlayHintKind.Type,
          paddingLeft: true,
        })),
      'same',
    ),
  );
}
