import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import type { Diagnostics } from './diagnostics';
import { completionCapability, registerCompletion } from './handlers/completion';
import { diagnosticCapability, registerDiagnostic } from './handlers/diagnostic';
import { hoverCapability, registerHover } from './handlers/hover';
import { inlayHintCapability, registerInlayHints } from './handlers/inlay-hint';
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
}

export function featureCapabilities(diagnostics: Diagnostics): ServerCapabilities {
  return {
    ...diagnosticCapability(diagnostics),
    ...hoverCapability,
    ...completionCapability,
    ...inlayHintCapability,
  };
}
