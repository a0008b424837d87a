import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { BoardLayer } from '../../board/layer/layer';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { Workspace } from '../../workspace/workspace';
import { type Encoding, fromClient, type LineSource } from '../convert/encoding';

/** The language id of a board's own text. */
export const boardLanguage = 'board-text';

/** A board's text that is open or included, with what it says as a craft script. */
export interface BoardDocument {
  readonly lines: LineSource;
  readonly layer: BoardLayer;
}

/** Board texts that are open in the editor, as the client edits them; what they say is the workspace's. */
export class BoardDocuments {
  private readonly open = new Map<string, TextDocument>();
  private readonly shown = new WeakMap<BoardLayer, BoardDocument>();

  constructor(
    private readonly workspace: Workspace,
    private readonly encoding: Encoding,
  ) {}

  /** The board's text of this name that is open or included; undefined for a script. */
  get(uri: string): BoardDocument | undefined {
    const layer = this.workspace.layer(uri);
    if (layer === undefined) return undefined;
    const known = this.shown.get(layer);
    if (known !== undefined) return known;
    const made = { lines: linesOf(layer.texts), layer };
    this.shown.set(layer, made);
    return made;
  }

  /** How many characters an open board's text has. */
  lengthOf(uri: string): number | undefined {
    return this.open.get(canonicalUri(uri))?.getText().length;
  }

  opened(uri: string, text: string, version: number): void {
    this.open.set(canonicalUri(uri), TextDocument.create(uri, boardLanguage, version, text));
    this.workspace.openBoardText(uri, text, version);
  }

  /** False when the text is not open. */
  changed(uri: string, changes: readonly TextDocumentContentChangeEvent[], version: number): boolean {
    const before = this.open.get(canonicalUri(uri));
    if (before === undefined) return false;
    const document = changes.reduce((one, change) => this.withChange(one, change, version), before);
    this.open.set(canonicalUri(uri), document);
    this.workspace.changeBoardText(uri, document.getText(), version);
    return true;
  }

  closed(uri: string): void {
    this.open.delete(canonicalUri(uri));
  }

  private withChange(
    document: TextDocument,
    change: TextDocumentContentChangeEvent,
    version: number,
  ): TextDocument {
    if (!('range' in change)) return TextDocument.update(document, [change], version);
    const at = (position: { line: number; character: number }) => {
      const end = { line: position.line + 1, character: 0 };
      const text = document.getText({ start: { line: position.line, character: 0 }, end });
      return fromClient({ lineAt: () => ({ text }) }, position, this.encoding);
    };
    const range = { start: at(change.range.start), end: at(change.range.end) };
    return TextDocument.update(document, [{ range, text: change.text }], version);
  }
}

function linesOf(texts: readonly string[]): LineSource {
  return {
    lineAt: (number) => {
      const text = texts[number];
      return text === undefined ? undefined : { text };
    },
  };
}
