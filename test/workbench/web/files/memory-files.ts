import * as vscode from 'vscode';

interface Entry {
  /** null: a folder. */
  readonly bytes: Uint8Array | null;
  readonly changed: number;
}

/** The least that an editor needs of a file system: files and folders by their paths. */
export class MemoryFiles implements vscode.FileSystemProvider {
  private readonly changes = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.changes.event;
  private readonly entries = new Map<string, Entry>([['/', { bytes: null, changed: 0 }]]);
  private clock = 0;

  /** Puts a file there, with the folders above it. */
  put(path: string, bytes: Uint8Array | null): void {
    const above = path.slice(0, path.lastIndexOf('/'));
    if (above !== '' && !this.entries.has(above)) this.put(above, null);
    this.clock += 1;
    this.entries.set(path, { bytes, changed: this.clock });
  }

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }

  stat(uri: vscode.Uri): vscode.FileStat {
    const { bytes, changed } = this.entry(uri);
    const type = bytes === null ? vscode.FileType.Directory : vscode.FileType.File;
    return { type, ctime: 0, mtime: changed, size: bytes?.length ?? 0 };
  }

  readDirectory(uri: vscode.Uri): [string, vscode.FileType][] {
    this.entry(uri);
    const start = uri.path === '/' ? '/' : `${uri.path}/`;
    const names = [...this.entries.keys()].flatMap((path) => {
      const name = path.startsWith(start) ? path.slice(start.length) : '';
      return name === '' || name.includes('/') ? [] : [name];
    });
    return names.map((name) => [name, this.stat(vscode.Uri.joinPath(uri, name)).type]);
  }

  readFile(uri: vscode.Uri): Uint8Array {
    const { bytes } = this.entry(uri);
    if (bytes === null) throw vscode.FileSystemError.FileIsADirectory(uri);
    return bytes;
  }

  createDirectory(uri: vscode.Uri): void {
    this.put(uri.path, null);
    this.tell(uri, vscode.FileChangeType.Created);
  }

  writeFile(uri: vscode.Uri, bytes: Uint8Array): void {
    const kind = this.entries.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
    this.put(uri.path, bytes);
    this.tell(uri, kind);
  }

  delete(uri: vscode.Uri): void {
    this.entry(uri);
    for (const path of [...this.entries.keys()])
      if (path === uri.path || path.startsWith(`${uri.path}/`)) this.entries.delete(path);
    this.tell(uri, vscode.FileChangeType.Deleted);
  }

  rename(from: vscode.Uri, to: vscode.Uri): void {
    for (const [path, { bytes }] of [...this.entries]) {
      if (path !== from.path && !path.startsWith(`${from.path}/`)) continue;
      this.put(`${to.path}${path.slice(from.path.length)}`, bytes);
      this.entries.delete(path);
    }
    this.tell(from, vscode.FileChangeType.Deleted);
    this.tell(to, vscode.FileChangeType.Created);
  }

  private entry(uri: vscode.Uri): Entry {
    const entry = this.entries.get(uri.path);
    if (entry === undefined) throw vscode.FileSystemError.FileNotFound(uri);
    return entry;
  }

  private tell(uri: vscode.Uri, type: vscode.FileChangeType): void {
    this.changes.fire([{ type, uri }]);
  }
}
