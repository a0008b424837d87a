import * as vscode from 'vscode';
import { nameOf } from './file-name';
import { fileSchemes, languageId } from './language';

const { t } = vscode.l10n;

/** A text captured from a board, and where it stands, if it is open or a file. */
export interface Capture {
  readonly text: string;
  readonly uri: vscode.Uri | null;
}

interface Source extends vscode.QuickPickItem {
  readonly get: () => Promise<Capture | undefined>;
}

/** No board's listing is longer. */
const longestBytes = 20_000_000;

/** Lets the pilot say where the captured text is; undefined when they leave it, or it can't be had. */
export async function pickCapture(title: string): Promise<Capture | undefined> {
  const schemes = fileSchemes();
  const open = vscode.workspace.textDocuments
    .filter(({ languageId: id, uri }) => id !== languageId && schemes.has(uri.scheme))
    .map((document): Source => {
      const name = nameOf(document.uri);
      const get = async () => ({ text: document.getText(), uri: document.uri });
      return { label: `$(file) ${name}`, description: t('open in the editor'), get };
    });
  const sources: readonly Source[] = [
    {
      label: `$(clippy) ${t('From the Clipboard')}`,
      description: t('as it was copied from the board'),
      get: fromClipboard,
    },
    { label: `$(folder-opened) ${t('From a File…')}`, get: fromFile },
    ...open,
  ];
  const picked = await vscode.window.showQuickPick(sources, {
    title,
    placeHolder: t('Where is the captured text?'),
  });
  const capture = await picked?.get();
  if (capture?.text.trim() === '') {
    void vscode.window.showWarningMessage(
      capture.uri === null ? emptyClipboard() : t('There is no text in it.'),
    );
    return undefined;
  }
  return capture;
}

function emptyClipboard(): string {
  return vscode.env.uiKind === vscode.UIKind.Web
    ? t(
        'The clipboard is empty, or this browser does not let it be read. Allow it for this page, or take the text from a file.',
      )
    : t('There is no text in the clipboard.');
}

async function fromClipboard(): Promise<Capture> {
  return { text: await vscode.env.clipboard.readText(), uri: null };
}

async function fromFile(): Promise<Capture | undefined> {
  const [uri] =
    (await vscode.window.showOpenDialog({ title: t('Captured Text'), canSelectMany: false })) ?? [];
  if (uri === undefined) return undefined;
  try {
    const { size } = await vscode.workspace.fs.stat(uri);
    if (size > longestBytes) throw new Error(t('it is far too long for a board’s settings'));
    const bytes = await vscode.workspace.fs.readFile(uri);
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), uri };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(t('The captured text could not be read: {reason}.', { reason }));
    return undefined;
  }
}
