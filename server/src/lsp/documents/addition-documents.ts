import type {
  Connection,
  Diagnostic,
  TextDocumentContentChangeEvent,
  TextDocumentEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { JsonEdit } from '../../additions/named-files';
import { type AdditionProblem, adviceFor, messageFor } from '../../additions/problem';
import type { OnFault } from '../../checks/checker';
import { type AdditionFiles, additionFolders } from '../../workspace/addition-files';
import { choicesFileName } from '../../workspace/choice-files';
import { fromClient, toClient } from '../convert/encoding';
import { jsonEdit, jsonLines } from '../convert/json-edit';
import {
  DiagnosticSeverity,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ProtocolNotificationType,
  TextDocumentSyncKind,
} from '../library';
import type { Session } from '../session';

/** Scripts, boards' texts and what is kept beside those. */
export const scriptFiles = '**/*.{craft,boardtext,board.json}';

/**
 * The files that add to the catalogue, as the editor opens and edits them. What they add is in use at once;
 * what is wrong with them is sent, also for those that are not open.
 */
export class AdditionDocuments {
  private readonly documents = new Map<string, TextDocument>();
  /** Files whose problems were published. */
  private published: ReadonlySet<string> = new Set();
  /** Files of which the disk has told something that has not been looked into. */
  private readonly diskNotes = new Set<string>();
  /** Resolves when all that came so far has been brought in: what is read earlier must not count later. */
  private settled: Promise<void> = Promise.resolve();

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly files: AdditionFiles,
    private readonly onFault: OnFault,
  ) {
    session.workspace.closed.leaveOut(files.leftOut);
    files.onAsked = () => this.settle(() => files.readAsked());
  }

  has(uri: string): boolean {
    return this.documents.has(uri) || this.files.isAddition(uri);
  }

  open(uri: string, text: string, version: number): void {
    this.documents.set(uri, TextDocument.create(uri, 'json', version, text));
    this.settle(() => this.files.opened(uri, text));
  }

  change(uri: string, changes: readonly TextDocumentContentChangeEvent[], version: number): void {
    const before = this.documents.get(uri);
    if (before === undefined) return;
    const document = changes.reduce((one, change) => this.changed(one, change, version), before);
    this.documents.set(uri, document);
    this.settle(() => this.files.opened(uri, document.getText()));
  }

  close(uri: string): void {
    this.documents.delete(uri);
    this.settle(() => this.files.closed(uri));
  }

  /** Many notes about one file that come while it is read are one. */
  diskChanged(uri: string): void {
    this.diskNotes.add(uri);
    if (this.diskNotes.size > 1) return;
    this.settle(async () => {
      const uris = [...this.diskNotes];
      this.diskNotes.clear();
      let hasChanged = false;
      for (const one of uris) hasChanged = (await this.files.diskChanged(one)) || hasChanged;
      return hasChanged;
    });
  }

  /** A script or a board's text was opened. */
  openedAlone(uri: string): void {
    this.settle(() => this.files.openedAlone(uri));
  }

  /** Resolves once all that came so far counts. */
  broughtIn(): Promise<void> {
    return this.settled;
  }

  /** Boards of the workspace that are called otherwise once their files lie elsewhere, with their new names. */
  boardsAfter(placeAfter: (file: string) => string): ReadonlyMap<string, string> {
    return this.files.boardsAfter(placeAfter);
  }

  /** Edits of the files of choices, each by its text and the folder that it is for. */
  choiceEdits(edits: (text: string, folder: string) => readonly JsonEdit[]): readonly TextDocumentEdit[] {
    return [...this.files.choiceTexts].flatMap(([file, text]) => {
      const made = edits(text, file.slice(0, file.lastIndexOf('/')));
      const uri = this.clientUri(file);
      const version = this.documents.get(uri)?.version ?? null;
      return made.length === 0 ? [] : [jsonEdit({ uri, version, text }, made, this.session.encoding)];
    });
  }

  setRoots(roots: readonly string[]): void {
    this.settle(() => this.files.setRoots(roots));
  }

  /**
   * Asks for these files beside the scripts: only their texts, so that no feature of ours is offered for them. What
   * happens to any of them on the disk, scripts among them, is to be told.
   */
  register(): void {
    const { client } = this.session;
    const patterns = [
      ...additionFolders.map((folder) => `**/${folder}/*.{json,jsonc}`),
      `**/${choicesFileName}`,
    ];
    const documentSelector = patterns.map((pattern) => ({ pattern }));
    if (client.opensOtherFiles) {
      const syncKind = TextDocumentSyncKind.Incremental;
      this.ask(DidOpenTextDocumentNotification.method, { documentSelector });
      this.ask(DidChangeTextDocumentNotification.method, { documentSelector, syncKind });
      this.ask(DidCloseTextDocumentNotification.method, { documentSelector });
    }
    if (client.watchesFiles) {
      this.ask(DidChangeWatchedFilesNotification.method, {
        watchers: [scriptFiles, ...patterns].map((globPattern) => ({ globPattern })),
      });
    }
    this.publish();
  }

  /** A client that refuses, against what it said of itself, is left alone with the files on the disk. */
  private ask(method: string, options: object): void {
    const type = new ProtocolNotificationType(method);
    this.connection.client.register(type, options).catch((error: unknown) => this.onFault(method, error));
  }

  private changed(
    document: TextDocument,
    change: TextDocumentContentChangeEvent,
    version: number,
  ): TextDocument {
    if (!('range' in change)) return TextDocument.update(document, [change], version);
    const { encoding } = this.session;
    const lines = jsonLines(document);
    const range = {
      start: fromClient(lines, change.range.start, encoding),
      end: fromClient(lines, change.range.end, encoding),
    };
    return TextDocument.update(document, [{ range, text: change.text }], version);
  }

  /** Brings in a change; when it made a difference, every script is checked with the catalogue as it now is. */
  private settle(change: () => boolean | Promise<boolean>): void {
    const run = async () => {
      await this.settled;
      if (!(await change())) return;
      const { workspace } = this.session;
      workspace.closed.leaveOut(this.files.leftOut);
      if (workspace.catalog !== this.files.catalog) {
        workspace.useCatalog(this.files.catalog);
      }
      this.publish();
    };
    this.settled = run().catch((error: unknown) => this.onFault('the additions of the workspace', error));
  }

  private publish(): void {
    const now = new Set<string>();
    for (const [file, problems] of this.files.problems) {
      const text = this.files.textOf(file);
      if (problems.length === 0 && !this.published.has(file)) continue;
      if (problems.length > 0) now.add(file);
      const document = TextDocument.create(file, 'json', 0, text);
      const diagnostics = problems.map((problem) => this.diagnostic(document, problem));
      void this.connection.sendDiagnostics({ uri: this.clientUri(file), diagnostics });
    }
    for (const file of this.published)
      if (!this.files.problems.has(file))
        void this.connection.sendDiagnostics({ uri: this.clientUri(file), diagnostics: [] });
    this.published = now;
  }

  /** As the client spells a file that it has opened. */
  private clientUri(file: string): string {
    return [...this.documents.keys()].find((uri) => this.files.isSame(uri, file)) ?? file;
  }

  private diagnostic(document: TextDocument, problem: AdditionProblem): Diagnostic {
    const lines = jsonLines(document);
    const { encoding } = this.session;
    return {
      range: {
        start: toClient(lines, document.positionAt(problem.start), encoding),
        end: toClient(lines, document.positionAt(problem.end), encoding),
      },
      severity: problem.id === 'addition/never' ? DiagnosticSeverity.Warning : DiagnosticSeverity.Error,
      code: problem.id,
      source: 'propsoff',
      message: `${messageFor(problem)}\n${adviceFor(problem)}`,
    };
  }
}
