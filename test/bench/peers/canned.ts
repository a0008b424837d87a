import type { CompletionItem, CompletionList, Diagnostic, Hover } from 'vscode-languageserver-protocol';

/** What an echo server answers: as much as the server that it is held against. */
export interface Canned {
  readonly diagnostics: readonly Diagnostic[];
  readonly hover: Hover | null;
  readonly completion: CompletionItem[] | CompletionList | null;
}
