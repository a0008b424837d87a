import { LSPErrorCodes, ResponseError, type ServerCapabilities, SymbolKind } from 'vscode-languageserver';
import { scriptsOf } from '../../features/navigation/named-at';
import { type WorkspaceSymbol, workspaceSymbols } from '../../features/navigation/workspace-symbols';
import type { Registration } from './features';

export const workspaceSymbolCapability: ServerCapabilities = { workspaceSymbolProvider: true };

const kinds: Readonly<Record<WorkspaceSymbol['kind'], SymbolKind>> = {
  pack: SymbolKind.Object,
  section: SymbolKind.Namespace,
  constant: SymbolKind.Constant,
};

/** Looks through the open scripts and what they include. The only request that is about no single script. */
export function registerWorkspaceSymbols({ connection, session, onFault }: Registration): void {
  connection.onWorkspaceSymbol(({ query }) => {
    try {
      return workspaceSymbols(scriptsOf(session.openCrafts()), query).map(
        ({ name, kind, container, location }) => ({
          name,
          kind: kinds[kind],
          containerName: container,
          location: session.clientLocation(location),
        }),
      );
    } catch (error) {
      onFault('workspace symbols', error);
      return new ResponseError(LSPErrorCodes.RequestFailed, 'The search failed; the log has the reason.');
    }
  });
}
