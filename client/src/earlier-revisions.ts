import * as vscode from 'vscode';

/** Of the editor's own Git extension, what is asked for here; it may be switched off or missing. */
interface Repository {
  log(options: { readonly maxEntries: number; readonly path: string }): Promise<readonly Commit[]>;
  show(revision: string, path: string): Promise<string>;
}

interface Commit {
  readonly hash: string;
  readonly message: string;
  readonly authorDate?: Date;
}

interface Git {
  /** Knows no repository before it has looked through the workspace. */
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: vscode.Event<Git['state']>;
  getRepository(uri: vscode.Uri): Repository | null;
}

interface GitExtension {
  getAPI(version: 1): Git;
}

/** An earlier text of a script. */
export interface Revision {
  readonly hash: string;
  readonly title: string;
  readonly date: string;
  text(): Promise<string>;
}

/** Whether there may be any at all: the page without an install keeps none. */
export function mayHaveRevisions(): boolean {
  return vscode.env.appHost !== 'page';
}

const most = 50;

/**
 * The revisions that touched a file, newest first; none where there is no repository, null where the editor has
 * no Git extension, as in a browser without a server.
 */
export async function earlierRevisions(uri: vscode.Uri): Promise<readonly Revision[] | null> {
  const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined) return null;
  try {
    const git = (await extension.activate()).getAPI(1);
    await lookedThrough(git);
    const repository = git.getRepository(uri);
    const commits = (await repository?.log({ maxEntries: most, path: uri.fsPath })) ?? [];
    return commits.map(({ hash, message, authorDate }) => ({
      hash: hash.slice(0, 8),
      title: message.split('\n')[0] ?? '',
      date: authorDate?.toISOString().slice(0, 10) ?? '',
      text: async () => (await repository?.show(hash, uri.fsPath)) ?? '',
    }));
  } catch {
    // Switched off, or no repository: there are no revisions to offer.
    return [];
  }
}

async function lookedThrough({ state, onDidChangeState }: Git): Promise<void> {
  if (state === 'initialized') return;
  await new Promise<void>((resolve) => {
    const waiting = onDidChangeState(() => {
      waiting.dispose();
      resolve();
    });
  });
}
