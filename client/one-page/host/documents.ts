import type { URI } from 'vscode-uri';
import { changesOf, type OpenText, offsetIn, positionIn } from '../texts';
import { fs } from './files';
import { keptPath, keptUri, thePage } from './page';
import { type Position, Range, Selection, Uri, type WorkspaceEdit } from './values';

export const craftLanguage = 'craft-script';
const boardLanguage = 'board-text';

/** Whether the server knows such texts: no others are checked. */
export function isServed(languageId: string): boolean {
  return languageId === craftLanguage || languageId === boardLanguage;
}

/** By the ending of its name, as the extension's manifest says it. */
function languageOf(path: string): string {
  if (path.endsWith('.craft')) return craftLanguage;
  if (path.endsWith('.boardtext')) return boardLanguage;
  return path.endsWith('.json') ? 'json' : 'plaintext';
}

/** `TextDocument`: an open text as our client sees it. */
export class Document {
  constructor(readonly text: OpenText) {}

  get uri(): URI {
    return this.text.place;
  }

  get languageId(): string {
    return this.text.languageId;
  }

  get version(): number {
    return this.text.shownVersion;
  }

  get isUntitled(): boolean {
    return this.uri.scheme === 'untitled';
  }

  /** What is written is kept at once. */
  get isDirty(): boolean {
    return false;
  }

  get isClosed(): boolean {
    return !thePage().texts.open.has(this.text.uri);
  }

  get lineCount(): number {
    return this.text.state.doc.lines;
  }

  getText(range?: Range): string {
    const { doc } = this.text.state;
    return range === undefined
      ? doc.toString()
      : doc.sliceString(offsetIn(doc, range.start), offsetIn(doc, range.end));
  }

  positionAt(offset: number): Position {
    return positionIn(this.text.state.doc, offset);
  }

  offsetAt(position: Position): number {
    return offsetIn(this.text.state.doc, position);
  }

  lineAt(line: number): { readonly text: string; readonly isEmptyOrWhitespace: boolean } {
    const { text } = this.text.state.doc.line(line + 1);
    return { text, isEmptyOrWhitespace: text.trim() === '' };
  }
}

const documents = new WeakMap<OpenText, Document>();

export function documentOf(text: OpenText): Document {
  const known = documents.get(text) ?? new Document(text);
  documents.set(text, known);
  return known;
}

/** `TextEditor`: the text that is shown, and what is selected of it. */
export class Editor {
  constructor(readonly document: Document) {}

  get selection(): Selection {
    const { state } = this.document.text;
    const { from, to } = state.selection.main;
    return new Selection(positionIn(state.doc, from), positionIn(state.doc, to));
  }

  async edit(build: (edits: { insert(at: Position, text: string): void }) => void): Promise<boolean> {
    const all: { range: Range; newText: string }[] = [];
    build({ insert: (at, newText) => all.push({ range: new Range(at, at), newText }) });
    this.document.text.change(changesOf(this.document.text.state.doc, all));
    return true;
  }
}

export function activeEditor(): Editor | undefined {
  const { active } = thePage().texts;
  return active === null ? undefined : new Editor(documentOf(active));
}

let untitled = 0;

/** Opens what is kept or was picked, or begins a new text: a script or a board's text is kept from its first line on. */
export async function openTextDocument(
  what: URI | { readonly language?: string; readonly content?: string },
): Promise<Document> {
  const { texts } = thePage();
  if (what instanceof Uri) {
    const open = texts.open.get(what.toString());
    if (open !== undefined) return documentOf(open);
    const content = new TextDecoder().decode(await fs.readFile(what));
    return documentOf(texts.add(what, languageOf(what.path), content));
  }
  const { language = 'plaintext', content = '' } = what;
  if (language === craftLanguage) {
    const place = keptUri(thePage().store.free(`${nameIn(content)}.craft`));
    await fs.writeFile(place, new TextEncoder().encode(content));
    return documentOf(texts.add(place, language, content));
  }
  untitled += 1;
  return documentOf(
    texts.add(Uri.from({ scheme: 'untitled', path: `Pasted-${untitled}` }), language, content),
  );
}

/** What a script is called, from the name of its craft. */
function nameIn(content: string): string {
  const name = /^[ \t]*name[ \t]*=[ \t]*"([^"\n]*)"/m.exec(content)?.[1] ?? '';
  const plain = name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .join('-');
  return plain === '' ? 'my-craft' : plain;
}

export async function setTextDocumentLanguage(document: Document, languageId: string): Promise<Document> {
  thePage().texts.setLanguage(document.text, languageId);
  return document;
}

export async function applyEdit(edit: WorkspaceEdit): Promise<boolean> {
  for (const [uri, edits] of edit.byUri) {
    const { text } = await openTextDocument(Uri.parse(uri));
    text.change(changesOf(text.state.doc, edits));
  }
  return true;
}

/** Closes a text; one that is kept stays kept. */
export function closeText(text: OpenText): void {
  thePage().texts.close(text);
}

export function relativePath(where: URI | string): string {
  return typeof where === 'string' ? where : (keptPath(where) ?? where.path.replace(/^\//, ''));
}
