import type { WorkspaceFoldersChangeEvent } from 'vscode-languageserver';
import type { Session } from '../session';
import type { AdditionDocuments } from './addition-documents';
import type { ServerFiles } from './editor-files';

/** The folders of the workspace: what lies outside them is not read, and what adds to the catalogue lies in them. */
export class Folders {
  constructor(
    private readonly session: Session,
    private readonly files: ServerFiles,
    private readonly additions: AdditionDocuments,
    private roots: readonly string[],
  ) {}

  /** The client has its answer to `initialize`: from now on it may be asked. */
  initialized(): void {
    if (this.files.asksClient) this.additions.setRoots(this.roots);
    this.additions.register();
  }

  changed({ added, removed }: WorkspaceFoldersChangeEvent): void {
    const gone = new Set(removed.map(({ uri }) => uri));
    this.roots = [...this.roots.filter((root) => !gone.has(root)), ...added.map(({ uri }) => uri)];
    this.files.setRoots(this.roots);
    this.session.workspace.rootsChanged([...gone]);
    this.additions.setRoots(this.roots);
  }
}
