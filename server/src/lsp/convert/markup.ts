import type { MarkupContent } from 'vscode-languageserver';
import { plainText } from '../../features/markdown';
import { MarkupKind } from '../library';

/** Text in the best form that the client shows. */
export function markup(markdown: string, takesMarkdown: boolean): MarkupContent {
  return takesMarkdown
    ? { kind: MarkupKind.Markdown, value: markdown }
    : { kind: MarkupKind.PlainText, value: plainText(markdown) };
}
