import * as vscode from 'vscode';
import {
  benchCardRequest,
  checkReadingRequest,
  keepReadingsRequest,
} from '../../server/src/lsp/flight-protocol';
import {
  type CardKept,
  type CardTaken,
  notWritten,
  takenFrom,
  takenTogether,
} from '../../server/src/sheet/bench-card/taken';
import type { FromCard, ToCard } from '../card/messages';
import { about } from './about';
import type { Client } from './client';
import { goTo } from './go-to';
import { activeCraftScript } from './language';
import { dateOfToday, writeNoted } from './note-flight';
import { openOwnPanel } from './own-page';
import { written } from './written';

const { t } = vscode.l10n;

/** Under what it is kept what a pilot took on the card of a script. */
export function cardKey(script: Pick<vscode.Uri, 'toString'>): string {
  return `propsoff.card ${script.toString()}`;
}

/** Something was taken on a card in another window or tab: what is kept under this key is another now. */
export const cardElsewhere = new vscode.EventEmitter<string>();

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
  const key = cardKey(uri);
  const taken = () => takenFrom(context.workspaceState.get(key));
  const postNothing = () =>
    post({
      kind: 'nothing',
      why: t('There is no card: nothing is written in this script yet, or it was closed.'),
    });
  const refresh = async () => {
    const answer = await client.request(benchCardRequest, about(uri));
    if (answer !== null) await post({ kind: 'card', card: answer.card, taken: taken(), uri: uri.toString() });
    else if (client.state === 'running') await postNothing();
  };
  const keepTaken = async (before: CardKept, mine: CardKept) => {
    const theirs = taken();
    const all = takenTogether(before, mine, theirs);
    await context.workspaceState.update(key, all);
    if (JSON.stringify(theirs) !== JSON.stringify(before)) await post({ kind: 'taken', taken: all });
  };
  const following = client.onChecked((checked) => {
    if (checked.toString() === uri.toString()) void refresh();
  });
  const leaving = vscode.workspace.onDidDeleteFiles(({ files }) => {
    if (files.some((file) => file.toString() === uri.toString())) void postNothing();
  });
  const elsewhere = cardElsewhere.event((changed) => {
    if (changed === key) void post({ kind: 'taken', taken: taken() });
  });
  panel.onDidDispose(() => vscode.Disposable.from(following, leaving, elsewhere).dispose());
  panel.webview.onDidReceiveMessage(async (message: FromCard) => {
    switch (message.kind) {
      case 'ready':
        return refresh();
      case 'go':
        return goTo(message.target, vscode.ViewColumn.One);
      case 'taken':
        return keepTaken(message.before, message.taken);
      case 'check': {
        const { id, reading } = message;
        const fault = await client.request(checkReadingRequest, { ...about(uri), ...reading });
        return post({ kind: 'checked', id, typed: reading.typed, fault });
      }
      case 'save':
        return save(client, uri, taken());
      case 'keep': {
        const answer = await keep(client, uri, taken());
        if (answer !== null) await post(answer);
      }
    }
  });
}

/** The card as a page to print, or as Markdown: by the ending that the pilot gives it. */
async function save(client: Client, script: vscode.Uri, taken: CardTaken): Promise<void> {
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(t('This workspace is not trusted: no file is written from it.'));
    return;
  }
  const answer = await client.request(benchCardRequest, { ...about(script), taken });
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

/**
 * Writes what was read off into the script, but for what is there already; what is to be told on the card then, such as
 * why it can't be.
 */
async function keep(client: Client, uri: vscode.Uri, taken: CardKept): Promise<ToCard | null> {
  const nothing = () => vscode.window.showInformationMessage(t('No reading is written on the card yet.'));
  const all = notWritten({ ...taken, written: [] });
  const readings = notWritten(taken);
  if (all.length === 0) {
    void nothing();
    return null;
  }
  if (readings.length === 0) {
    const again = t('Write Them Again');
    const said = t('All readings on the card were written into the script already.');
    const picked = await vscode.window.showInformationMessage(said, again);
    return picked === again ? keep(client, uri, { ...taken, written: [] }) : null;
  }
  const asked = { ...about(uri), ticked: taken.ticked, readings, today: dateOfToday() };
  const answer = await client.request(keepReadingsRequest, asked);
  if (answer === null && client.state === 'running') void nothing();
  else if (answer === null) void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
  else if ('faults' in answer) return { kind: 'faults', faults: answer.faults };
  else if (await writeNoted(uri, answer)) return { kind: 'kept', readings };
  return null;
}
