import * as vscode from 'vscode';
import { benchCardRequest, keepReadingsRequest } from '../../server/src/lsp/protocol';
import { type CardState, emptyCard, type FromCard, type ToCard } from '../card/messages';
import { about } from './about';
import type { Client } from './client';
import { goTo } from './go-to';
import { activeCraftScript } from './language';
import { dateOfToday, writeFlight } from './note-flight';
import { openOwnPanel } from './own-page';
import { written } from './written';

const { t } = vscode.l10n;

/** Opens the bench card of the active craft script in a page at the side; it follows the script. */
export async function openBenchCard(context: vscode.ExtensionContext, client: Client): Promise<void> {
  const uri = activeCraftScript()?.document.uri;
  if (uri === undefined) {
    void vscode.window.showInformationMessage(t('Open a craft script first: the card is made from it.'));
    return;
  }
  const page = { name: 'card', title: t('Bench Card') } as const;
  const panel = openOwnPanel(context, page, vscode.ViewColumn.Beside);
  const post = (message: ToCard) => panel.webview.postMessage(message);
  const key = `propsoff.card ${uri.toString()}`;
  const state = () => context.workspaceState.get<CardState>(key) ?? emptyCard;
  const refresh = async () => {
    const answer = await client.request(benchCardRequest, about(uri));
    if (answer !== null) await post({ kind: 'card', card: answer.card, state: state() });
    else if (client.state === 'running')
      await post({
        kind: 'nothing',
        why: t('There is no card: nothing is written in this script yet, or it was closed.'),
      });
  };
  const following = client.onChecked((checked) => {
    if (checked.toString() === uri.toString()) void refresh();
  });
  panel.onDidDispose(() => following.dispose());
  panel.webview.onDidReceiveMessage(async (message: FromCard) => {
    switch (message.kind) {
      case 'ready':
        return refresh();
      case 'go':
        return goTo(message.target, vscode.ViewColumn.One);
      case 'state':
        return context.workspaceState.update(key, message.state);
      case 'save':
        return save(client, uri);
      case 'keep': {
        const faults = await keep(client, uri, state());
        if (faults.length > 0) await post({ kind: 'faults', faults });
      }
    }
  });
}

/** The card as a page to print, or as Markdown: by the ending that the pilot gives it. */
async function save(client: Client, script: vscode.Uri): Promise<void> {
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(t('This workspace is not trusted: no file is written from it.'));
    return;
  }
  const answer = await client.request(benchCardRequest, about(script));
  if (answer === null) return;
  const defaultUri = script.with({ path: `${script.path.replace(/\.craft$/, '')}.bench.html` });
  const uri = await vscode.window.showSaveDialog({
    title: t('Save the Bench Card'),
    filters: { [t('Page to print')]: ['html'], Markdown: ['md'] },
    ...(script.scheme === 'untitled' ? {} : { defaultUri }),
  });
  if (uri === undefined) return;
  const text = uri.path.endsWith('.md') ? answer.markdown : answer.page;
  if (!(await written(uri, text))) return;
  const open = t('Open');
  // What opens a file lies on the desktop; in a browser only the editor itself sees the file.
  const isOnDesktop = uri.scheme === 'file' && vscode.env.uiKind === vscode.UIKind.Desktop;
  const picked = await vscode.window.showInformationMessage(
    isOnDesktop
      ? t('The card is saved. Print it from a browser, on A4 or A5.')
      : t('The card is saved. Download it from the explorer and print it from a browser, on A4 or A5.'),
    ...(isOnDesktop ? [open] : []),
  );
  if (picked === open) await vscode.env.openExternal(uri);
}

/** Writes what was read off into the script; what can't be written is given back with the reason. */
async function keep(client: Client, uri: vscode.Uri, { readings }: CardState) {
  const filled = readings.filter(({ value }) => value.trim() !== '');
  if (filled.length === 0) {
    void vscode.window.showInformationMessage(t('No reading is written on the card yet.'));
    return [];
  }
  const asked = { ...about(uri), readings: filled, today: dateOfToday() };
  const answer = await client.request(keepReadingsRequest, asked);
  if (answer === null) void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
  else if ('faults' in answer) return answer.faults;
  else await writeFlight(uri, answer);
  return [];
}
