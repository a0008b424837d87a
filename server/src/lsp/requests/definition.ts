import type { Location, LocationLink, ServerCapabilities } from 'vscode-languageserver';
import { definition, type Target } from '../../features/navigation/definition';
import type { Session } from '../session';
import type { Registration } from './features';
import { answering } from './request';

export const definitionCapability: ServerCapabilities = { definitionProvider: true };

export function registerDefinition({ connection, session, onFault }: Registration): void {
  const hasLinks = session.client.textDocument?.definition?.linkSupport === true;
  connection.onDefinition(
    answering(session, onFault, 'definition', ({ snapshot }, { position }) => {
      const at = session.position(snapshot.script, position);
      const found = definition(snapshot, at, session.openCrafts());
      if (found === null) return null;
      if (!hasLinks) return found.targets.map((target) => locationOf(session, target));
      const origin = session.clientRange(snapshot.script, found.origin);
      return found.targets.map((target) => ({ originSelectionRange: origin, ...linkTo(session, target) }));
    }),
  );
}

function locationOf(session: Session, { uri, selection }: Target): Location {
  return session.clientLocation({ uri, range: selection });
}

function linkTo(session: Session, { uri, range, selection }: Target): LocationLink {
  return {
    targetUri: session.clientUri(uri),
    targetRange: session.clientLocation({ uri, range }).range,
    targetSelectionRange: session.clientLocation({ uri, range: selection }).range,
  };
}
