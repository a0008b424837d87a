import type {
  ServerCapabilities,
  TextDocumentContentChangeEvent,
  TextDocumentItem,
  VersionedTextDocumentIdentifier,
} from 'vscode-languageserver';
import { FileOperationPatternKind, TextDocumentSyncKind } from '../library';
import type { Session } from '../session';
import { type AdditionDocuments, scriptFiles } from './addition-documents';
import type { Diagnostics } from './diagnostics';
import { OpenTexts } from './open-texts';
import type { WorkspaceFindings } from './workspace-findings';

/** Takes in what the client opens, edits and closes, and what happens to files on the disk. */
export class Documents {
  private readonly texts: OpenTexts;

  constructor(
    private readonly session: Session,
    private readonly diagnostics: Diagnostics,
    private readonly workspaceFindings: WorkspaceFindings,
    private readonly additions: AdditionDocuments,
  ) {
    this.texts = new OpenTexts(session);
  }

  open(document: TextDocumentItem): void {
    const { uri, text, version } = document;
    if (this.additions.has(uri)) this.additions.open(uri, text, version);
    else {
      this.additions.openedAlone(uri);
      this.texts.open(document);
      this.diagnostics.changed(uri);
    }
  }

  change(
    { uri, version }: VersionedTextDocumentIdentifier,
    changes: readonly TextDocumentContentChangeEvent[],
  ): void {
    if (this.additions.has(uri)) this.additions.change(uri, changes, version);
    else if (this.texts.change(uri, version, changes)) this.diagnostics.changed(uri);
  }

  close(uri: string): void {
    if (this.additions.has(uri)) this.additions.close(uri);
    else {
      const closed = this.texts.close(uri);
      if (closed === null) return;
      this.diagnostics.closed(closed);
      this.workspaceFindings.closed(closed);
    }
  }

  /** Files or folders that were made, changed, renamed or deleted. */
  diskChanged(uris: readonly string[]): void {
    for (const uri of uris) {
      this.session.workspace.diskChanged(uri);
      this.additions.diskChanged(uri);
    }
  }

  /** The client wrote a file; resolves once it counts. */
  async written(uri: string): Promise<null> {
    this.diskChanged([uri]);
    await this.additions.broughtIn();
    return null;
  }

  /** The pilot says whose text a board's text is. */
  pickBoard(uri: string, board: string): void {
    this.session.workspace.pickBoard(uri, board);
    this.diagnostics.changed(uri);
  }

  /** The pilot looks at another pack. */
  pickPack(uri: string, pack: string | null): void {
    this.session.pickPack(uri, pack);
    this.diagnostics.changed(uri);
  }
}

/** Watchers name files only; that a whole folder went is reported by the editor that did it. */
const foldersAndScripts = {
  filters: [
    { pattern: { glob: scriptFiles, matches: FileOperationPatternKind.file } },
    { pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
  ],
};

/** What scripts name: each other, boards' texts, boards by their profiles. */
const namedFiles = {
  filters: [
    ...foldersAndScripts.filters,
    { pattern: { glob: '**/boards/*.{json,jsonc}', matches: FileOperationPatternKind.file } },
  ],
};

export const documentCapabilities: ServerCapabilities = {
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: {
      didDelete: foldersAndScripts,
      didRename: foldersAndScripts,
      willRename: namedFiles,
    },
  },
};
