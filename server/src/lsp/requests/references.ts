import type { ServerCapabilities } from 'vscode-languageserver';
import { references } from '../../features/navigation/references';
import type { Registration } from './features';
import { answering } from './request';

export const referencesCapability: ServerCapabilities = { referencesProvider: true };

export function registerReferences({ connection, session, onFault }: Registration): void {
  connection.onReferences(
    answering(session, onFault, 'references', ({ snapshot }, { position, context }) => {
      const options = { withDefinitions: context.includeDeclaration, open: session.openCrafts() };
      return references(snapshot, session.position(snapshot.script, position), options).map((location) =>
        session.clientLocation(location),
      );
    }),
  );
}
