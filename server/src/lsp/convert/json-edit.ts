import type { TextDocumentEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { JsonEdit } from '../../additions/named-files';
import { type Encoding, type LineSource, toClient } from './encoding';

/** A JSON file; `version`: null where it is not open. */
interface JsonFile {
  readonly uri: string;
  readonly version: number | null;
  readonly text: string;
}

/** Edits of a JSON file as the client counts. */
export function jsonEdit(
  { uri, version, text }: JsonFile,
  edits: readonly JsonEdit[],
  encoding: Encoding,
): TextDocumentEdit {
  const document = TextDocument.create(uri, 'json', 0, text);
  const lines = jsonLines(document);
  const place = (offset: number) => toClient(lines, document.positionAt(offset), encoding);
  return {
    textDocument: { uri, version },
    edits: edits.map(({ at, newText }) => ({
      range: { start: place(at.start), end: place(at.end) },
      newText,
    })),
  };
}

/** The lines of a text as positions count in them. */
export function jsonLines(document: TextDocument): LineSource {
  return {
    lineAt: (line) => {
      const end = { line: line + 1, character: 0 };
      return { text: document.getText({ start: { line, character: 0 }, end }) };
    },
  };
}
