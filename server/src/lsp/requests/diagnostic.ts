import { DocumentDiagnosticReportKind, type ServerCapabilities } from 'vscode-languageserver';
import type { Diagnostics } from '../documents/diagnostics';
import type { Registration } from './features';

/** Pull diagnostics, offered only to clients that say they can ask; the others get findings pushed. */
export function diagnosticCapability(diagnostics: Diagnostics): ServerCapabilities {
  if (!diagnostics.canBePulled) return {};
  return {
    diagnosticProvider: { identifier: 'propsoff', interFileDependencies: true, workspaceDiagnostics: false },
  };
}

export function registerDiagnostic({ connection, onFault }: Registration, diagnostics: Diagnostics): void {
  if (!diagnostics.canBePulled) return;
  connection.languages.diagnostics.on(({ textDocument, previousResultId }) => {
    try {
      return diagnostics.report(textDocument.uri, previousResultId);
    } catch (error) {
      onFault('diagnostics', error);
      return { kind: DocumentDiagnosticReportKind.Full, items: [] };
    }
  });
}
