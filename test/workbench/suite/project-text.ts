import * as vscode from 'vscode';

/** Where the project lies: a browser has it only where the page came from, with the extension's files. */
function projectFolder(): vscode.Uri {
  const path = process.env.PROPSOFF_ROOT;
  if (path !== undefined) return vscode.Uri.file(path);
  const extension = vscode.extensions.getExtension('propsoff.propsoff');
  return extension?.extensionUri.with({ path: '/project' }) ?? vscode.Uri.file('/');
}

/** The text of a file of the project, such as an example that tests share. */
export async function projectText(path: string): Promise<string> {
  const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(projectFolder(), path));
  return new TextDecoder().decode(bytes);
}
