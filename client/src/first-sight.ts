import * as vscode from 'vscode';
import { activeScript } from './language';
import { SheetView } from './sheet-view';

/** Shows the build sheet beside the first craft script of a window, where that is wanted; the script keeps the focus. */
export function showSheetAtFirst(): vscode.Disposable {
  let isShown = false;
  const show = async () => {
    const script = activeScript();
    if (isShown || script === undefined) return;
    isShown = true;
    if (vscode.workspace.getConfiguration('propsoff', script.document).get('buildSheet.showAtFirst') === true)
      await vscode.commands.executeCommand(`${SheetView.id}.focus`, { preserveFocus: true });
  };
  void show();
  return vscode.window.onDidChangeActiveTextEditor(() => void show());
}
