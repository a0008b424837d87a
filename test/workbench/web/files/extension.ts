import * as vscode from 'vscode';
import { MemoryFiles } from './memory-files';

/** Serves `shelf:/demo`: the files that the test's server gives, in memory, so that tests may change them. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const address = context.extensionUri.with({ path: '/files' }).toString(true);
  const given = (await (await fetch(address)).json()) as Record<string, string>;
  const files = new MemoryFiles();
  for (const [path, text] of Object.entries(given))
    files.put(`/demo/${path}`, new TextEncoder().encode(text));
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('shelf', files, { isCaseSensitive: true }),
  );
}
