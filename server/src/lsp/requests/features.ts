import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import type { Diagnostics } from '../documents/diagnostics';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import { codeActionCapability, registerCodeActions } from './code-action';
import { codeLensCapability, registerCodeLenses } from './code-lens';
import { completionCapability, registerCompletion } from './completion';
import { definitionCapability, registerDefinition } from './definition';
import { diagnosticCapability, registerDiagnostic } from './diagnostic';
import { documentHighlightCapability, registerDocumentHighlights } from './document-highlight';
import { documentLinkCapability, registerDocumentLinks } from './document-link';
import { documentSymbolCapability, registerDocumentSymbols } from './document-symbol';
import { foldingRangeCapability, registerFoldingRanges } from './folding-range';
import { formattingCapability, registerFormatting } from './formatting';
import { hoverCapability, registerHover } from './hover';
import { inlayHintCapability, registerInlayHints } from './inlay-hint';
import { referencesCapability, registerReferences } from './references';
import { registerRename, renameCapability } from './rename';
import { registerSelectionRanges, selectionRangeCapability } from './selection-range';
import { registerSemanticTokens, semanticTokensCapability } from './semantic-tokens';
import { registerWorkspaceSymbols, workspaceSymbolCapability } from './workspace-symbol';

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
