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
