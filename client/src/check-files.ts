import * as vscode from 'vscode';

/** More editors than this nobody wants opened by one press. */
const most = 20;

/** Opens scripts or boards' texts that were picked in the explorer, and shows what is found in them. */
export async function checkFiles(picked: vscode.Uri, all: readonly vscode.Uri[] = [picked]): Promise<void> {
  for (const uri of all.slice(0, most)) await vscode.window.showTextDocument(uri, { preview: false });
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  if (all.length > most)
    void vscode.window.showInformationMessage(
      vscode.l10n.t('{most} of the {count} files were opened. The command line checks all: propsoff check', {
        most,
        count: all.length,
      }),
    );
}
