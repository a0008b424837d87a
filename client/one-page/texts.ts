import type { WorkspaceFile } from '@codemirror/lsp-client';
import { ChangeSet, EditorState, type Extension, type Text, type TransactionSpec } from '@codemirror/state';
import { EditorView } from '@codemirror/view';
import type { Diagnostic } from 'vscode-languageclient';
import type { URI } from 'vscode-uri';
import { EventEmitter, Position, type TextReplaced } from './host/values';

/** An open text, in the editor or behind it: what our client sees of it, and what the server was told. */
export class OpenText implements WorkspaceFile {
  readonly uri: string;
  readonly place: URI;
  /** As the server was last told. */
  version = 1;
  doc: Text;
  /** What the server has not been told yet. */
  private unsent: ChangeSet;
  /** How its lines end in its file, if all do so; the editor itself counts every end as one character. */
  readonly lineEnd: string;
  /** As the server sent them, for the text that it was told; null before it has. */
  found: readonly Diagnostic[] | null = null;

  constructor(
    place: URI,
    public languageId: string,
    public state: EditorState,
    private readonly texts: Texts,
    content: string,
  ) {
    this.lineEnd = /\r\n/.test(content) && !/[^\r]\n|\r(?!\n)/.test(content) ? '\r\n' : '\n';
    this.place = place;
    this.uri = place.toString();
    this.doc = state.doc;
    this.unsent = ChangeSet.empty(state.doc.length);
  }

  getView(): EditorView | null {
    return this.texts.active === this ? this.texts.view : null;
  }

  /** A change that nobody typed. */
  change(spec: TransactionSpec): void {
    const view = this.getView();
    if (view !== null) view.dispatch(spec);
    else {
      const transaction = this.state.update(spec);
      this.changed(transaction.state, transaction.changes);
    }
  }

  changed(state: EditorState, changes: ChangeSet): void {
    this.state = state;
    if (changes.empty) return;
    this.unsent = this.unsent.compose(changes);
    this.texts.changedText(this);
  }

  /** The text as its file holds it. */
  get written(): string {
    return this.state.doc.toString().replaceAll('\n', this.lineEnd);
  }

  /** What the server is to be told now; null: nothing. */
  toSend(): { readonly prevDoc: Text; readonly changes: ChangeSet } | null {
    const { unsent, doc: prevDoc } = this;
    if (unsent.empty) return null;
    this.unsent = ChangeSet.empty(this.state.doc.length);
    this.doc = this.state.doc;
    this.version += 1;
    return { prevDoc, changes: unsent };
  }

  /** The version that the text as it stands has, or will have once the server is told. */
  get shownVersion(): number {
    return this.unsent.empty ? this.version : this.version + 1;
  }

  /** Where a place stands now that the server named in the text that it knows. */
  offsetOf({ line, character }: { readonly line: number; readonly character: number }): number {
    const { doc } = this;
    if (line >= doc.lines) return this.unsent.mapPos(doc.length);
    const { from, length } = doc.line(line + 1);
    return this.unsent.mapPos(from + Math.min(character, length));
  }
}

/** Styles are made as the page runs: the policy lets in those that bear its word. */
export function pageStyles(): Extension {
  return EditorView.cspNonce.of(document.querySelector('style')?.nonce ?? '');
}

/** What the editor holds while no text is shown. */
function nothing(): EditorState {
  return EditorState.create({ extensions: pageStyles() });
}

/** Where a place stands in a text, no farther than it goes. */
export function offsetIn(doc: Text, { line, character }: { line: number; character: number }): number {
  if (line >= doc.lines) return doc.length;
  const { from, length } = doc.line(line + 1);
  return from + Math.min(character, length);
}

export function positionIn(doc: Text, offset: number): Position {
  const line = doc.lineAt(Math.min(offset, doc.length));
  return new Position(line.number - 1, offset - line.from);
}

/** The texts that are open, of which the editor shows one. */
export class Texts {
  readonly open = new Map<string, OpenText>();
  active: OpenText | null = null;
  private made: EditorView | null = null;
  private readonly extensions: (text: OpenText) => Extension;
  readonly onOpened = new EventEmitter<OpenText>();
  readonly onClosed = new EventEmitter<OpenText>();
  readonly onChanged = new EventEmitter<OpenText>();
  /** What was written is in the browser's storage, or it was said that it is not. */
  readonly onKept = new EventEmitter<OpenText>();
  /** Another text is shown, or none. */
  readonly onShown = new EventEmitter<OpenText | null>();
  readonly onSelected = new EventEmitter<OpenText>();

  /** `tell`: what the server is told of them. */
  constructor(
    private readonly place: HTMLElement,
    extensions: (text: OpenText) => Extension,
    private readonly tell: {
      opened: (text: OpenText) => void;
      closed: (uri: string) => void;
      sync: () => void;
    },
  ) {
    this.extensions = extensions;
  }

  /** The editor component: made for the first text that is shown, and the same for all. */
  get view(): EditorView {
    this.made ??= new EditorView({ parent: this.place, state: this.active?.state ?? nothing() });
    return this.made;
  }

  add(place: URI, languageId: string, content: string): OpenText {
    const text: OpenText = new OpenText(
      place,
      languageId,
      EditorState.create({ doc: content }),
      this,
      content,
    );
    text.state = this.stateOf(text, content);
    text.doc = text.state.doc;
    this.open.set(text.uri, text);
    this.tell.opened(text);
    this.onOpened.fire(text);
    return text;
  }

  /** The same text in another language. */
  setLanguage(text: OpenText, languageId: string): void {
    this.tell.sync();
    this.tell.closed(text.uri);
    text.languageId = languageId;
    text.found = null;
    const { doc, selection } = text.state;
    text.state = this.stateOf(text, doc.toString()).update({ selection }).state;
    text.doc = text.state.doc;
    this.tell.opened(text);
    if (this.active === text) this.view.setState(text.state);
  }

  show(text: OpenText, selection?: { readonly from: number; readonly to: number }): void {
    this.tell.sync();
    const isOther = this.active !== text;
    if (isOther) {
      const isFirst = this.made === null;
      this.active = text;
      this.view.dom.hidden = false;
      if (!isFirst) this.view.setState(text.state);
      this.onShown.fire(text);
    }
    if (selection === undefined) return;
    const { from, to } = selection;
    this.view.dispatch({
      selection: { anchor: from, head: to },
      effects: EditorView.scrollIntoView(from, { y: 'center' }),
    });
  }

  close(text: OpenText): void {
    this.tell.sync();
    this.open.delete(text.uri);
    this.tell.closed(text.uri);
    if (this.active === text) this.showAnother();
    this.onClosed.fire(text);
  }

  private showAnother(): void {
    this.active = null;
    const next = [...this.open.values()].at(-1);
    if (next !== undefined) this.show(next);
    else {
      this.view.setState(nothing());
      this.view.dom.hidden = true;
      this.onShown.fire(null);
    }
  }

  changedText(text: OpenText): void {
    this.onChanged.fire(text);
  }

  private stateOf(text: OpenText, doc: string): EditorState {
    const follow = EditorView.updateListener.of((update) => {
      if (update.transactions.length > 0) text.changed(update.state, update.changes);
      if (update.selectionSet || update.docChanged) this.onSelected.fire(text);
    });
    return EditorState.create({ doc, extensions: [follow, this.extensions(text)] });
  }
}

/** Edits of a text as its editor counts. */
export function changesOf(doc: Text, edits: readonly TextReplaced[]): TransactionSpec {
  const changes = edits.map(({ range, newText }) => ({
    from: offsetIn(doc, range.start),
    to: offsetIn(doc, range.end),
    insert: newText.replace(/\r\n?/g, '\n'),
  }));
  return { changes, userEvent: 'input.complete' };
}
