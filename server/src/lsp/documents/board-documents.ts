import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Translation, Translator } from '../../board/translation';
import { translatorOf } from '../../board/translator-of';
import type { DocumentEdit } from '../../language/document';
import { splitLines } from '../../language/split-lines';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { Workspace } from '../../workspace/workspace';
import { type Encoding, fromClient, type Lines } from '../convert/encoding';

/** The language id of a board's own text. */
export const boardLanguage = 'board-text';

/** A board's text that is open, with what it says as a craft script. */
export interface BoardDocument {
  readonly uri: string;
  readonly lines: Lines;
  /** null: no profile knows it. */
  readonly translation: Translation | null;
}

interface Open extends BoardDocument {
  readonly document: TextDocument;
  readonly translator: Translator | null;
  /** As picked by the pilot; null: as the text itself shows. */
  readonly picked: string | null;
}

/**
 * Board texts that are open in the editor. Each is translated line for line into a craft script, which the
 * workspace holds under the same URI: one engine checks both.
 */
export class BoardDocuments {
  private readonly open = new Map<string, Open>();

  constructor(
    private readonly workspace: Workspace,
    private readonly encoding: Encoding,
  ) {}

  get(uri: string): BoardDocument | undefined {
    // Asked at every place of every finding, and mostly there is none.
    if (this.open.size === 0) return undefined;
    return this.open.get(canonicalUri(uri));
  }

  /** How many characters a board's text has. */
  lengthOf(uri: string): number | undefined {
    return this.open.get(canonicalUri(uri))?.document.getText().length;
  }

  opened(uri: string, text: string, version: number): void {
    const document = TextDocument.create(uri, boardLanguage, version, text);
    const made = this.made(document, null, null);
    this.open.set(canonicalUri(uri), made);
    this.workspace.openTranslated(uri, scriptOf(made), version);
  }

  /** False when the text is not open. */
  changed(uri: string, changes: readonly TextDocumentContentChangeEvent[], version: number): boolean {
    const before = this.open.get(canonicalUri(uri));
    if (before === undefined) return false;
    const document = changes.reduce((one, change) => this.withChange(one, change, version), before.document);
    this.replace(before, this.made(document, before.picked, before.translator), version);
    return true;
  }

  closed(uri: string): void {
    this.open.delete(canonicalUri(uri));
  }

  /** The pilot says whose text it is. */
  pick(uri: string, board: string): void {
    const before = this.open.get(canonicalUri(uri));
    if (before !== undefined)
      this.replace(before, this.made(before.document, board, null), before.document.version);
  }

  /** Profiles may have changed: every text is read anew. */
  catalogChanged(): void {
    for (const before of this.open.values())
      this.replace(before, this.made(before.document, before.picked, null), before.document.version);
  }

  private replace(before: Open, after: Open, version: number): void {
    this.open.set(canonicalUri(before.uri), after);
    const held = this.workspace.get(before.uri)?.script.document.text() ?? '';
    this.workspace.change(before.uri, differenceOf(held, scriptOf(after)), version);
  }

  private made(document: TextDocument, picked: string | null, before: Translator | null): Open {
    const text = document.getText();
    const lines = splitLines(text).map((line) => line.text);
    const translator = before ?? translatorOf(this.workspace.catalog, text, picked);
    return {
      uri: document.uri,
      document,
      lines: { lineAt: (number) => (lines[number] === undefined ? undefined : { text: lines[number] }) },
      translator,
      translation: translator?.translate(lines) ?? null,
      picked,
    };
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

function scriptOf({ translation }: Open): string {
  return translation?.script ?? '';
}

/** One edit that makes one text of another: the lines between what both begin and end with. */
function differenceOf(before: string, after: string): readonly DocumentEdit[] {
  if (before === after) return [];
  const [old, now] = [before.split('\n'), after.split('\n')];
  let first = 0;
  while (first < old.length && first < now.length && old[first] === now[first]) first += 1;
  let last = 0;
  while (last < old.length - first && last < now.length - first && old.at(-1 - last) === now.at(-1 - last))
    last += 1;
  const kept = old.length - last;
  const added = now.slice(first, now.length - last);
  if (last > 0) {
    const start = { line: first, character: 0 };
    return [{ start, end: { line: kept, character: 0 }, text: added.map((line) => `${line}\n`).join('') }];
  }
  if (first > 0) {
    const start = { line: first - 1, character: old[first - 1]?.length ?? 0 };
    const end = { line: old.length - 1, character: old.at(-1)?.length ?? 0 };
    return [{ start, end, text: added.map((line) => `\n${line}`).join('') }];
  }
  const end = { line: old.length, character: 0 };
  return [{ start: { line: 0, character: 0 }, end, text: after }];
}
