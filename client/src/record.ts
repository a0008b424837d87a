import * as vscode from 'vscode';

/** What is kept beside a script: what was last handed over to a board, or set at the last noted flight. */
type RecordKind = 'handed' | 'flown';

/** The record of a script; null where there is none yet. */
export async function readRecord(script: vscode.Uri, kind: RecordKind): Promise<string | null> {
  const uri = recordUri(script, kind);
  if (uri === null) return null;
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  } catch {
    return null;
  }
}

/** The record of the script that is looked at: read once, and again when its file has changed. */
export class WatchedRecord implements vscode.Disposable {
  private script: string | null = null;
  private text: Promise<string | null> | null = null;
  private watching: readonly vscode.Disposable[] = [];

  constructor(
    private readonly kind: RecordKind,
    private readonly onChanged: () => void,
  ) {}

  of(script: vscode.Uri): Promise<string | null> {
    if (script.toString() !== this.script) this.watch(script);
    this.text ??= readRecord(script, this.kind);
    return this.text;
  }

  dispose(): void {
    for (const one of this.watching) one.dispose();
  }

  /** All records beside the script are watched: its name may hold what means something in a pattern. */
  private watch(script: vscode.Uri): void {
    this.dispose();
    this.script = script.toString();
    const changed = () => {
      this.text = null;
      this.onChanged();
    };
    this.text = null;
    const uri = recordUri(script, this.kind);
    if (uri === null) {
      this.watching = [];
      return;
    }
    const pattern = new vscode.RelativePattern(vscode.Uri.joinPath(uri, '..'), `*.${this.kind}.json`);
    const watcher = vscode.workspace.createFileSystemWatcher(pattern);
    const events = [watcher.onDidCreate, watcher.onDidChange, watcher.onDidDelete];
    this.watching = [watcher, ...events.map((event) => event(changed))];
  }
}

/** Keeps a record where there is a place for it and the workspace is trusted; why it could not, else null. */
export async function writeRecord(
  script: vscode.Uri,
  kind: RecordKind,
  record: string,
): Promise<string | null> {
  const uri = recordUri(script, kind);
  if (uri === null || !vscode.workspace.isTrusted) return null;
  try {
    await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(record));
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** Null for a script that is not saved anywhere. */
function recordUri(script: vscode.Uri, kind: RecordKind): vscode.Uri | null {
  return script.scheme === 'untitled' ? null : script.with({ path: `${script.path}.${kind}.json` });
}
