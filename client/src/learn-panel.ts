import * as vscode from 'vscode';
import { meaningsRequest, sayableRequest } from '../../server/src/lsp/learn-protocol';
import type { FromLearn, ToLearn } from '../learn/messages';
import { pickCapture } from './captures';
import type { Client } from './client';
import { nameOf } from './file-name';
import { boardLanguageId } from './language';
import { answered } from './learn-answers';
import { fileOf, inHand, type LearnSubject } from './learn-subject';
import { openOwnPanel } from './own-page';
import { profilesToEdit, textOfBoard } from './texts-of-boards';

const { t } = vscode.l10n;

const panels = new Map<string, { readonly panel: vscode.WebviewPanel; go: (key: string) => void }>();

/** On a board's text that is open: of that one; else of a text that the pilot picks. */
export async function sayMeanings(context: vscode.ExtensionContext, client: Client): Promise<void> {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId === boardLanguageId) return openFor(context, client, document.uri, null);
  const capture = await pickCapture(t('Say What Settings Mean'));
  if (capture === undefined) return;
  const { text, uri } = capture;
  await open(
    context,
    client,
    { ...subjectOf(uri, uri === null ? 'board' : nameOf(uri)), text: async () => text },
    null,
  );
}

/** Of one setting of a board's text. */
export async function sayMeaning(
  context: vscode.ExtensionContext,
  client: Client,
  uri: string,
  key: string,
): Promise<void> {
  await openFor(context, client, vscode.Uri.parse(uri), key);
}

/** Of a board whose profile is there: with a text of it, if the workspace holds one. */
export async function editProfile(context: vscode.ExtensionContext, client: Client): Promise<void> {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId === boardLanguageId) return openFor(context, client, document.uri, null);
  const board = await pickProfile();
  if (board === undefined) return;
  const uri = await textOfBoard(board);
  if (uri !== null) return openFor(context, client, uri, null);
  const subject = { ...subjectOf(null, board), board, text: async () => '' };
  await open(context, client, subject, null);
}

async function pickProfile(): Promise<string | undefined> {
  const all = await profilesToEdit();
  const active = vscode.window.activeTextEditor?.document.uri;
  const own = all.find(({ uri }) => uri.toString() === active?.toString());
  if (own !== undefined) return own.board;
  if (all.length === 0) {
    void vscode.window.showInformationMessage(
      t('There is no board profile in this folder yet. Say What Settings Mean makes one.'),
    );
    return undefined;
  }
  const items = all.map(({ board }) => ({ label: board }));
  return (await vscode.window.showQuickPick(items, { title: t('Edit Board Profile') }))?.label;
}

async function openFor(
  context: vscode.ExtensionContext,
  client: Client,
  uri: vscode.Uri,
  key: string | null,
): Promise<void> {
  const text = async () => (await vscode.workspace.openTextDocument(uri)).getText();
  await open(context, client, { ...subjectOf(uri, nameOf(uri)), text }, key);
}

function subjectOf(uri: vscode.Uri | null, fileName: string): Omit<LearnSubject, 'text'> {
  return { fileName, uri, board: null, isByName: true, isNew: false };
}

/** The page of a board; one that is open already is shown again. */
async function open(
  context: vscode.ExtensionContext,
  client: Client,
  subject: LearnSubject,
  key: string | null,
): Promise<void> {
  const id = subject.uri?.toString() ?? '';
  const known = id === '' ? undefined : panels.get(id);
  if (known !== undefined) {
    known.panel.reveal();
    if (key !== null) known.go(key);
    return;
  }
  const page = { name: 'learn', title: t('What Settings Mean') } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Active);
  const post = (message: ToLearn) => panel.webview.postMessage(message);
  const show = async (at: string | null) => post(await shown(client, subject, at));
  // Each press is kept before the next is looked at.
  let turn = Promise.resolve();
  panel.webview.onDidReceiveMessage((message: FromLearn) => {
    turn = turn.then(async () => {
      if (message.kind === 'ready') await show(key);
      else if (message.kind === 'open') await openProfile(subject);
      else {
        await post(await answered(client, subject, message));
        if (message.to === 'lesson') await show(null);
      }
    });
  });
  const saved = vscode.workspace.onDidSaveTextDocument((document) => {
    if (document.uri.toString() === id) turn = turn.then(async () => void (await show(null)));
  });
  panel.onDidDispose(() => {
    saved.dispose();
    panels.delete(id);
  });
  if (id !== '') panels.set(id, { panel, go: (to) => void post({ kind: 'go', key: to }) });
}

async function shown(client: Client, subject: LearnSubject, key: string | null): Promise<ToLearn> {
  const answer = await client.request(meaningsRequest, { of: await inHand(subject) });
  if (answer === null) return { kind: 'refused', message: t('Propsoff’s checks are not running.') };
  if (answer.kind === 'refused') return answer;
  subject.board = answer.board;
  subject.isByName = answer.isByName;
  subject.isNew = answer.isNew;
  const sayable = (await client.request(sayableRequest, {})) ?? [];
  return { kind: 'meanings', meanings: answer, sayable, place: `boards/${answer.board}.json`, key };
}

async function openProfile(subject: LearnSubject): Promise<void> {
  const file = fileOf(subject);
  if (file !== null) await vscode.window.showTextDocument(file, { viewColumn: vscode.ViewColumn.Beside });
}
