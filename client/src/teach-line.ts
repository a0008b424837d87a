import * as vscode from 'vscode';
import type { BoardLesson } from '../../server/src/lsp/learn-protocol';
import type { Client } from './client';
import { boardLanguageId } from './language';
import { teach } from './teach';

const { t } = vscode.l10n;

const command = 'propsoff.teachLine';
const unreadable = 'board/unreadable';

/** What a line of a board's text is can be said with a press: where it was not understood, or is asked about. */
export function teachingOfLines(client: Client): readonly vscode.Disposable[] {
  return [
    vscode.commands.registerCommand(command, (uri: vscode.Uri, lesson: BoardLesson) =>
      teach(client, uri, lesson),
    ),
    vscode.languages.registerCodeActionsProvider(
      { language: boardLanguageId },
      { provideCodeActions: actionsFor },
      { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
    ),
  ];
}

function actionsFor(
  document: vscode.TextDocument,
  { start }: vscode.Range,
  { diagnostics, triggerKind }: vscode.CodeActionContext,
): vscode.CodeAction[] {
  const unread = diagnostics.find(isUnread);
  // A line may be read as what it is not: who asks about it is offered the same, and nobody else is.
  const isAsked =
    triggerKind === vscode.CodeActionTriggerKind.Invoke &&
    diagnostics.length === 0 &&
    !document.lineAt(start.line).isEmptyOrWhitespace;
  if (unread === undefined && !isAsked) return [];
  const about = { uri: document.uri, line: unread?.range.start.line ?? start.line, diagnostic: unread };
  return [
    action(about, 'setting', t('This is a setting')),
    action(about, 'comment', t('This is a comment')),
    action(about, 'heading', t('This is a heading')),
  ];
}

function isUnread({ source, code }: vscode.Diagnostic): boolean {
  const id = typeof code === 'object' ? code.value : code;
  return source === 'propsoff' && id === unreadable;
}

interface LineToTeach {
  readonly uri: vscode.Uri;
  readonly line: number;
  readonly diagnostic: vscode.Diagnostic | undefined;
}

function action(
  { uri, line, diagnostic }: LineToTeach,
  kind: BoardLesson['kind'],
  title: string,
): vscode.CodeAction {
  const lesson: BoardLesson = { kind, line, part: '' };
  const made = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
  if (diagnostic !== undefined) made.diagnostics = [diagnostic];
  made.command = { command, title, arguments: [uri, lesson] };
  return made;
}
