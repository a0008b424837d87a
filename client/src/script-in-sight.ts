import * as vscode from 'vscode';
import { activeCraftScript } from './language';

/** As package.json names it. */
const key = 'propsoff.seesCraftScript';

/**
 * Keeps commands on offer while a page such as a proof or the bench card has the focus and the script stands beside
 * it: the editor itself then knows no language, and our commands take the script that is seen.
 */
export function watchScriptInSight(): vscode.Disposable {
  let told: boolean | undefined;
  const tell = () => {
    const sees = activeCraftScript() !== undefined;
    if (sees === told) return;
    told = sees;
    void vscode.commands.executeCommand('setContext', key, sees);
  };
  tell();
  return vscode.Disposable.from(
    vscode.window.onDidChangeActiveTextEditor(tell),
    vscode.window.onDidChangeVisibleTextEditors(tell),
    vscode.workspace.onDidOpenTextDocument(tell),
  );
}
