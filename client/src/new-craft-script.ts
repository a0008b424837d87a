import * as vscode from 'vscode';
import { languageId } from './language';

interface Starter extends vscode.QuickPickItem {
  readonly file: string;
}

const starters: readonly Starter[] = [
  {
    label: 'First craft',
    description: 'five inches, four cells',
    detail: 'The lines that every craft needs, each with its why',
    file: 'first-craft.craft',
  },
  {
    label: 'Hall craft',
    description: 'palm-sized, one or two cells',
    detail: 'Light, gentle, indoors',
    file: 'hall-craft.craft',
  },
  {
    label: 'Long flight',
    description: 'seven inches, position sensor and log',
    detail: 'Efficient packs, a way home, a record',
    file: 'long-flight.craft',
  },
];

/**
 * Lets the pilot pick a starter and opens it as a new script that is saved nowhere yet. A link or a key binding
 * may name the starter's file at once.
 */
export async function newCraftScript(context: vscode.ExtensionContext, file?: unknown): Promise<void> {
  const picked = starters.find((one) => one.file === file) ?? (await pick());
  if (picked === undefined) return;
  const uri = vscode.Uri.joinPath(context.extensionUri, 'client', 'starters', picked.file);
  const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  const document = await vscode.workspace.openTextDocument({ language: languageId, content });
  await vscode.window.showTextDocument(document);
}

async function pick(): Promise<Starter | undefined> {
  return vscode.window.showQuickPick([...starters], {
    title: 'New Craft Script',
    placeHolder: 'What comes closest to the craft on your bench?',
  });
}
