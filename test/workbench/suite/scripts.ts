import * as vscode from 'vscode';
import { until } from './until';

/** The script that the active editor shows once it is opened: new, saved nowhere, with this text. */
export async function openText(content: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument({ language: 'craft-script', content });
  await vscode.window.showTextDocument(document);
  return document;
}

/** A script of the demo workspace, in the active editor. */
export async function openDemo(name: string): Promise<vscode.TextDocument> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri ?? vscode.Uri.file('/');
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder, name));
  await vscode.window.showTextDocument(document);
  return document;
}

/** Where a text stands for the first time; `into` moves on from its start. */
export function placeOf(document: vscode.TextDocument, text: string, into = 0): vscode.Position {
  const at = document.getText().indexOf(text);
  if (at < 0) throw new Error(`"${text}" is not in ${document.uri.path}`);
  return document.positionAt(at + into);
}

/** Ids of the checks that found something, in the order that the editor has them. */
export function foundIn({ uri }: vscode.TextDocument): readonly string[] {
  return vscode.languages.getDiagnostics(uri).map(checkOf);
}

/** The id of the check that found something, whether it leads to the check's story or not. */
export function checkOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

/** Waits until a check has found something; what was found instead is said when it never does. */
export async function untilFound(document: vscode.TextDocument, id: string): Promise<vscode.Diagnostic> {
  const found = () => vscode.languages.getDiagnostics(document.uri);
  const instead = () =>
    `${document.uri}, ${document.languageId}: ${found().map(checkOf).join(', ') || 'nothing'}`;
  return until(
    () => `${id} to be found in ${instead()}`,
    () => found().find((one) => checkOf(one) === id),
  );
}

/** Runs one of the editor's own commands that ask providers; waits until what it gives is not empty. */
export async function asked<T>(command: string, ...given: unknown[]): Promise<readonly T[]> {
  return until(`an answer to ${command}`, async () => {
    const answer = await vscode.commands.executeCommand<readonly T[] | undefined>(command, ...given);
    return answer !== undefined && answer.length > 0 && answer;
  });
}

/**
 * Closes every editor and forgets what was not saved. An editor is listed for a moment after its tab has gone, and its
 * text for another: a new script that takes the same name meanwhile would be answered about as that one, or never be
 * asked about.
 */
export async function closeAll(): Promise<void> {
  await until('every editor to be closed', async () => {
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    const { tabGroups, visibleTextEditors } = vscode.window;
    const isLeft = vscode.workspace.textDocuments.some(({ uri }) => uri.scheme === 'untitled');
    return !isLeft && visibleTextEditors.length === 0 && tabGroups.all.every(({ tabs }) => tabs.length === 0);
  });
}

/** Ids of the checks that found what must be fixed or is a risk; a section that stands twice is neither. */
export function seriousIn({ uri }: vscode.TextDocument): readonly string[] {
  const { Error: error, Warning: warning } = vscode.DiagnosticSeverity;
  return vscode.languages
    .getDiagnostics(uri)
    .filter(({ severity }) => severity === error || severity === warning)
    .map(checkOf);
}
