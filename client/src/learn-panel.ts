import * as vscode from 'vscode';
import { learnRequest, makeProfileRequest, parametersRequest } from '../../server/src/lsp/protocol';
import type { FromLearn, ToLearn } from '../learn/messages';
import { pickCapture } from './captures';
import type { Client } from './client';
import { exists } from './exists';
import { openOwnPanel } from './own-page';
import { written } from './written';

const { t } = vscode.l10n;

const boardName = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** Learns a board's text from a capture: a table in which the pilot says what each setting stands for. */
export async function learnBoard(context: vscode.ExtensionContext, client: Client): Promise<void> {
  const capture = await pickCapture(t('Make Board Profile from Captured Text'));
  if (capture === undefined) return;
  const learned = await client.request(learnRequest, { capture: capture.text });
  if (learned === null) {
    void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
    return;
  }
  if (learned.line === null) {
    void vscode.window.showWarningMessage(learned.summary);
    return;
  }
  const page = { name: 'learn', title: t('Make a Board Profile') } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Active);
  panel.webview.onDidReceiveMessage(async (message: FromLearn) => {
    if (message.kind === 'ready') {
      const parameters = (await client.request(parametersRequest, {})) ?? [];
      const answer: ToLearn = { kind: 'learned', learned, parameters };
      await panel.webview.postMessage(answer);
    } else if (await made(client, capture.text, message)) panel.dispose();
  });
}

/** Writes the profile into the workspace's folder for boards and opens it. */
async function made(
  client: Client,
  capture: string,
  { name, confirmed }: Extract<FromLearn, { kind: 'make' }>,
): Promise<boolean> {
  if (!boardName.test(name)) {
    void vscode.window.showWarningMessage(
      t('“{name}” is no name for a board: small letters, with hyphens between words.', { name }),
    );
    return false;
  }
  const profile = await client.request(makeProfileRequest, { capture, name, confirmed });
  if (profile === null) {
    void vscode.window.showErrorMessage(t('No profile could be made of this text.'));
    return false;
  }
  const uri = await profileUri(name);
  if (uri === null) {
    const content = profile.text;
    await vscode.window.showTextDocument(
      await vscode.workspace.openTextDocument({ language: 'json', content }),
    );
  } else {
    if (!(await written(uri, profile.text))) return false;
    await vscode.window.showTextDocument(uri);
  }
  const { mapped, own } = profile;
  const said = t(
    '{mapped} settings stand for parameters, {own} are the board’s own. Fill in its hardware, then name it in a script: [board] profile = {name}',
    { mapped, own, name },
  );
  void vscode.window.showInformationMessage(said);
  return true;
}

/** Where the profile goes; null where there is no folder that may be written to, or the pilot keeps what is there. */
async function profileUri(name: string): Promise<vscode.Uri | null> {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder === undefined || !vscode.workspace.isTrusted) return null;
  const uri = vscode.Uri.joinPath(folder.uri, 'boards', `${name}.json`);
  if (!(await exists(uri))) return uri;
  const replace = t('Replace It');
  const picked = await vscode.window.showWarningMessage(
    t('There is a profile {name} already.', { name }),
    { modal: true },
    replace,
  );
  return picked === replace ? uri : null;
}
