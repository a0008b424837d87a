import type { Diagnostic } from 'vscode-languageserver-protocol/node';

/** Findings in short: `line:start-end id`, numbers as the protocol counts. */
export function shown(diagnostics: readonly Diagnostic[]): readonly string[] {
  return diagnostics.map(({ code, range: { start, end } }) => {
    const to = end.line === start.line ? `${end.character}` : `${end.line}:${end.character}`;
    return `${start.line}:${start.character}-${to} ${code ?? 'no id'}`;
  });
}
