import type { ServerCapabilities } from 'vscode-languageserver';
import { semanticTokenTypes } from '../../features/semantic-tokens';
import type { ClientAbilities } from '../client-abilities';
import { CodeActionKind } from '../library';

/** All fixes of a script that leave no choice, at once. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.propsoff`;

/** What can be written otherwise, by what becomes of it. */
export const refactorKinds = {
  extract: CodeActionKind.RefactorExtract,
  rewrite: CodeActionKind.RefactorRewrite,
  move: CodeActionKind.RefactorMove,
} as const;

export const tokensCapability: ServerCapabilities = {
  semanticTokensProvider: {
    legend: { tokenTypes: [...semanticTokenTypes], tokenModifiers: [] },
    full: true,
    range: true,
  },
};

/** Without literals a client takes only commands, which could do nothing that the edits don't. */
export function codeActionCapability({
  codeActions,
  resolvesActions,
}: ClientAbilities): ServerCapabilities | null {
  if (!codeActions) return null;
  const codeActionKinds = [CodeActionKind.QuickFix, ...Object.values(refactorKinds), fixAllKind];
  return { codeActionProvider: { codeActionKinds, resolveProvider: resolvesActions } };
}

export function renameCapability({ asksBeforeRename }: ClientAbilities): ServerCapabilities {
  return { renameProvider: asksBeforeRename ? { prepareProvider: true, workDoneProgress: true } : true };
}
