import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import type { Diagnostics } from './diagnostics';
import { codeActionCapability, registerCodeActions } from './handlers/code-action';
import { codeLensCapability, registerCodeLenses } from './handlers/code-lens';
import { completionCapability, registerCompletion } from './handlers/completion';
import { definitionCapability, registerDefinition } from './handlers/definition';
import { diagnosticCapability, registerDiagnostic } from './handlers/diagnostic';
import { documentHighlightCapability, registerDocumentHighlights } from './handlers/document-highlight';
import { documentLinkCapability, registerDocumentLinks } from './handlers/document-link';
import { documentSymbolCapability, registerDocumentSymbols } from './handlers/document-symbol';
import { foldingRangeCapability, registerFoldingRanges } from './handlers/folding-range';
import { formattingCapability, registerFormatting } from './handlers/formatting';
import { hoverCapability, registerHover } from './handlers/hover';
import { inlayHintCapability, registerInlayHints } from './handlers/inlay-hint';
import { referencesCapability, registerReferences } from './handlers/references';
import { registerRename, renameCapability } from './handlers/rename';
import { registerSelectionRanges, selectionRangeCapability } from './handlers/selection-range';
import { registerSemanticTokens, semanticTokensCapability } from './handlers/semantic-tokens';
import { registerWorkspaceSymbols, workspaceSymbolCapability } from './handlers/workspace-symbol';
import type { OnServerFault } from './server';
import type { Session } from './session';

/** What every handler is registered with. */
export interface Registration {
  readonly connection: Connection;
  readonly session: Session;
  readonly onFault: OnServerFault;
}

/** Every standard request that the server answers: a line each, its capability beside its handler. */
export function registerFeatures(
  connection: Connection,
  session: Session,
  diagnostics: Diagnostics,
  onFault: OnServerFault,
): void {
  const registration = { connection, session, onFault };
  registerDiagnostic(registration, diagnostics);
  registerHover(registration);
  registerCompletion(registration);
  registerInlayHints(registration);
  registerCodeActions(registration);
  registerFormatting(registration);
  registerRename(registration);
  registerDefinition(registration);
  registerReferences(registration);
  registerDocumentHighlights(registration);
  registerDocumentLinks(registration);
  registerDocumentSymbols(registration);
  registerFoldingRanges(registration);
  registerSelectionRanges(registration);
  registerSemanticTokens(registration);
  registerWorkspaceSymbols(registration);
  registerCodeLenses(registration);
}

export function featureCapabilities(session: Session, diagnostics: Diagnostics): ServerCapabilities {
  return {
    ...diagnosticCapability(diagnostics),
    ...hoverCapability,
    ...completionCapability,
    ...inlayHintCapability,
    ...codeLensCapability,
    ...codeActionCapability,
    ...formattingCapability,
    ...renameCapability(session),
    ...definitionCapability,
    ...referencesCapability,
    ...documentHighlightCapability,
    ...documentLinkCapability,
    ...documentSymbolCapability,
    ...foldingRangeCapability,
    ...selectionRangeCapability,
    ...semanticTokensCapability,
    ...workspaceSymbolCapability,
  };
}
