import * as vscode from 'vscode';
import type { BoardLesson } from '../../server/src/lsp/protocol';
import type { Client } from './client';
import { boardLanguageId } from './language';
import { teach } from './teach';

const { t } = vscode.l10n;

const command = 'propsoff.teachLine';
const unreadable = 'board/unreadable';

/** On a line of a board's text that was not understood: what it is can be said with a press. */
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
  { uri }: vscode.TextDocument,
  _range: vscode.Range,
  { diagnostics }: vscode.CodeActionContext,
): vscode.CodeAction[] {
  return diagnostics
    .filter(isUnread)
    .flatMap((diagnostic) => [
      action(uri, diagnostic, 'setting', t('This is a setting')),
      action(uri, diagnostic, 'comment', t('This is a comment')),
      action(uri, diagnostic, 'heading', t('This is a heading')),
    ]);
}

function isUnread({ source, code }: vscode.Diagnostic): boolean {
  const id = typeof code === 'object' ? code.value : code;
  return source === 'propsoff' && id === unreadable;
}

function action(
  uri: vscode.Uri,
  diagnostic: vscode.Diagnostic,
  kind: BoardLesson['kind'],
  title: string,
): vscode.CodeAction {
  const lesson: BoardLesson = { kind, line: diagnostic.range.start.line, part: '' };
  const made = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
  made.diagnostics = [diagnostic];
  made.command = { command, title, arguments: [uri, lesson] };
  return made;
}
