import * as vscode from 'vscode';
import {
  type BoardTextAnswer,
  type BoardTextParams,
  boardTextRequest,
} from '../../server/src/lsp/board-protocol';
import { about } from './about';
import type { Client } from './client';
import { stepDone } from './first-steps';
import { activeScript } from './language';
import { pickBoard } from './pick-board';
import { readRecord, writeRecord } from './record';
import { teach, teachCommand } from './teach';
import { written } from './written';

const { t } = vscode.l10n;

type Text = Extract<BoardTextAnswer, { kind: 'text' }>;
type WantedText = Omit<BoardTextParams, 'textDocument'>;

/** Hands the active craft over: its board's text goes to the clipboard, piece by piece, or into a file. */
export async function copyForBoard(client: Client): Promise<void> {
  const script = activeScript()?.document;
  if (script === undefined) {
    void vscode.window.showInformationMessage(
      t('First open the craft script, or the board text, that the board is to be set up with.'),
    );
    return;
  }
  if (!vscode.workspace.isTrusted) {
    void vscode.window.showWarningMessage(
      t('This workspace is not trusted: nothing is handed over to a board from it.'),
    );
    return;
  }
  const since = await wantedSince(script.uri);
  if (since !== undefined) await handOver(client, script.uri, since);
}

async function handOver(client: Client, script: vscode.Uri, since: string | null): Promise<void> {
  const text = await wantedText(client, script, { board: null, since, reason: null, isPreview: false });
  if (text === undefined) return;
  for (const line of text.report) client.log.info(line);
  if (text.count === 0) {
    void vscode.window.showInformationMessage(
      t('Nothing changed since the last hand-over to {board}.', { board: text.board.title }),
    );
    return;
  }
  const isDone = isLong(text)
    ? await savedAsFile(script, text, t('The text is long: save it as a file'))
    : await copied(script, text);
  if (!isDone) return;
  stepDone('hasHandedOver');
  const fault = await writeRecord(script, 'handed', text.record);
  if (fault !== null)
    void vscode.window.showWarningMessage(
      t('The hand-over could not be recorded beside the script: {reason}', { reason: fault }),
    );
  await offer(client, script, text);
}

/** What was copied, and what can be said or seen of it. */
async function offer(client: Client, script: vscode.Uri, text: Text): Promise<void> {
  const show = t('Show Details');
  const example = t('Say How…');
  const same = t('Told the Same');
  const choices = text.isAssumed ? [example, same, show] : [show];
  const picked = await vscode.window.showInformationMessage(said(text), ...choices);
  if (picked === show) client.log.show();
  if (picked === same) await teach(client, script, { kind: 'same-command', line: null, part: '' });
  // What was copied is in the wrong form by that: all of it is copied anew.
  if (picked === example && (await teachCommand(client, script))) await handOver(client, script, null);
}

function said({ count, board, pack, unchecked, isAssumed }: Text): string {
  const settings =
    pack === null
      ? t('{count} settings for {board}.', { count, board: board.title })
      : t('{count} settings for {board}, pack {pack}.', { count, board: board.title, pack });
  const aside = unchecked === null ? [] : [t('Read as a part: what a whole craft needs was not checked.')];
  const assumed = isAssumed
    ? [t('The lines are as the board lists them: nobody has said how it is told a setting.')]
    : [];
  return [settings, ...aside, ...assumed, t('Propellers off before a pack is connected.')].join(' ');
}

/** The record of the last hand-over, null for everything; undefined: the pilot has left. */
async function wantedSince(script: vscode.Uri): Promise<string | null | undefined> {
  const record = await readRecord(script, 'handed');
  if (record === null) return null;
  const all = { label: t('Everything'), since: null };
  const changed = {
    label: t('Only what changed'),
    description: t('since the last hand-over'),
    since: record,
  };
  const picked = await vscode.window.showQuickPick([all, changed], { title: t('Copy Text for the Board') });
  return picked === undefined ? undefined : picked.since;
}

/** The text; undefined where it is held back and the pilot leaves it at that. */
async function wantedText(client: Client, script: vscode.Uri, wanted: WantedText): Promise<Text | undefined> {
  // It waits for all that the script includes, which may lie on a slow drive.
  const answer = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Window, title: t('Making the text for the board') },
    () => client.request(boardTextRequest, { ...about(script), ...wanted }),
  );
  switch (answer?.kind) {
    case 'text':
      return answer;
    case 'blocked': {
      const reason = await reasonAgainst(answer.blocking);
      return reason === undefined ? undefined : wantedText(client, script, { ...wanted, reason });
    }
    case 'no-board': {
      const board = await pickBoard(answer.boards, answer.message);
      return board === undefined ? undefined : wantedText(client, script, { ...wanted, board });
    }
    default:
      void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
      return undefined;
  }
}

async function reasonAgainst(blocking: readonly string[]): Promise<string | undefined> {
  const [counts = '', ...findings] = blocking;
  const anyway = t('Hand Over Anyway…');
  const problems = t('Show Problems');
  const detail = findings.map((line) => line.trim()).join('\n');
  const picked = await vscode.window.showWarningMessage(counts, { modal: true, detail }, problems, anyway);
  if (picked === problems) await vscode.commands.executeCommand('workbench.actions.view.problems');
  if (picked !== anyway) return undefined;
  return vscode.window.showInputBox({
    title: t('Hand Over in Spite of Must-Fix Findings'),
    prompt: t('Why? The reason is written into the text and into the record beside the script.'),
    validateInput: (reason) => (reason.trim() === '' ? t('A reason in words is needed.') : undefined),
    ignoreFocusOut: true,
  });
}

function isLong({ pieces }: Text): boolean {
  const most = vscode.workspace.getConfiguration('propsoff').get<number>('handOver.longestClipboard') ?? 0;
  return pieces.reduce((sum, piece) => sum + piece.length, 0) > most;
}

/** One piece after the other, each read back; false when the pilot leaves or the clipboard holds something else. */
async function copied(script: vscode.Uri, text: Text): Promise<boolean> {
  const { pieces } = text;
  for (const [index, piece] of pieces.entries()) {
    const back = await readBack(piece);
    if (back === '' && vscode.env.uiKind === vscode.UIKind.Web) return savedInstead(script, text);
    if (back === null || normal(back) !== normal(piece)) {
      void vscode.window.showErrorMessage(
        t('The clipboard does not hold what was copied. Nothing was handed over.'),
      );
      return false;
    }
    if (index === pieces.length - 1) return true;
    const lines = piece.split('\n').length - 1;
    const next = t('Copy the Next Piece');
    const copied = t(
      'Piece {piece} of {pieces} copied, {lines} lines. Paste it, wait until the board has taken it, then go on.',
      { piece: index + 1, pieces: pieces.length, lines },
    );
    if ((await vscode.window.showInformationMessage(copied, { modal: true }, next)) !== next) return false;
  }
  return true;
}

/** A piece as the clipboard gives it back: it may keep a part of it only. Null: it refused. */
async function readBack(piece: string): Promise<string | null> {
  try {
    await vscode.env.clipboard.writeText(piece);
    return await vscode.env.clipboard.readText();
  } catch {
    return null;
  }
}

/** A browser may keep its clipboard from being read; then nobody can tell what the board would be given. */
async function savedInstead(script: vscode.Uri, text: Text): Promise<boolean> {
  const save = t('Save as a File…');
  const picked = await vscode.window.showWarningMessage(
    t(
      'This browser does not let the clipboard be read back, so it can’t be told whether it holds the whole text. Allow it for this page, or save the text as a file.',
    ),
    { modal: true },
    save,
  );
  return picked === save && savedAsFile(script, text, t('Save the text for the board'));
}

/** Some systems change line ends on the way through their clipboard; nothing else may change. */
function normal(text: string): string {
  return text.replace(/\r\n?/g, '\n');
}

async function savedAsFile(script: vscode.Uri, { pieces }: Text, title: string): Promise<boolean> {
  // A board's own text stays what it is: what goes to the board stands beside it.
  const isCraft = script.path.endsWith('.craft');
  const base = script.path.replace(/\.(craft|boardtext)$/, '');
  const defaultUri = script.with({ path: base + (isCraft ? '.boardtext' : '-handed.boardtext') });
  const uri = await vscode.window.showSaveDialog({
    title,
    ...(script.scheme === 'untitled' ? {} : { defaultUri }),
  });
  if (uri === undefined) return false;
  return written(uri, pieces.join(''));
}
