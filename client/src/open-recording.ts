import * as vscode from 'vscode';
import type { Client } from './client';
import { nameOf } from './file-name';
import { openOwnPanel, PagesOfFiles } from './own-page';
import { activeRecording, pickRecording } from './pick-recording';
import { RecordingTalk } from './recording-talk';
import type { RecordingsSaid } from './recordings-said';

const { t } = vscode.l10n;

const pages = new PagesOfFiles();

/** `given`: a file that was picked in the explorer, or the URI of one that a script names. */
export async function openRecording(
  context: vscode.ExtensionContext,
  client: Client,
  said: RecordingsSaid,
  given?: unknown,
): Promise<void> {
  const uri = uriOf(given) ?? activeRecording() ?? (await pickRecording(client, t('Open Recording')));
  if (uri === undefined) return;
  if (pages.showAgain(uri)) return;
  const page = { name: 'recording', title: t('Recording {name}', { name: nameOf(uri) }) } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Beside);
  pages.add(uri, panel);
  const talk = new RecordingTalk(client, uri, {
    send: (message) => void panel.webview.postMessage(message),
    open: (other) => void openRecording(context, client, said, other),
    note: (read, { report }) => said.note(read, report),
    shaking: (other) => said.all().find((one) => one.uri === other)?.shaking,
  });
  panel.onDidDispose(() => talk.stop());
  panel.webview.onDidReceiveMessage((message) => talk.received(message));
}

function uriOf(given: unknown): vscode.Uri | undefined {
  if (given instanceof vscode.Uri) return given;
  return typeof given === 'string' ? vscode.Uri.parse(given) : undefined;
}
