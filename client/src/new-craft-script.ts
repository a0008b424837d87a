import * as vscode from 'vscode';
import { languageId } from './language';
import { withSlips } from './practice';

const { t } = vscode.l10n;

interface Starter extends vscode.QuickPickItem {
  /** By which a link or a key binding names it. */
  readonly id: string;
  readonly file: string;
  readonly change?: (text: string) => string;
}

const starters: readonly Starter[] = [
  {
    id: 'first-craft.craft',
    label: t('First craft'),
    description: t('five inches, four cells'),
    detail: t('The lines that every craft needs, each with its reason'),
    file: 'first-craft.craft',
  },
  {
    id: 'hall-craft.craft',
    label: t('Hall craft'),
    description: t('palm-sized, one or two cells'),
    detail: t('Light, gentle, indoors'),
    file: 'hall-craft.craft',
  },
  {
    id: 'long-flight.craft',
    label: t('Long flight'),
    description: t('seven inches, position receiver and log'),
    detail: t('Efficient packs, a way home, a record'),
    file: 'long-flight.craft',
  },
  {
    id: 'practice',
    label: t('Practice craft'),
    description: t('the first craft with three slips'),
    detail: t('To find and to mend; nothing for a real board'),
    file: 'first-craft.craft',
    change: withSlips,
  },
];

/**
 * Lets the pilot pick a starter and opens it as a new script that is saved nowhere yet. A link or a key binding
 * may name the starter at once.
 */
export async function newCraftScript(context: vscode.ExtensionContext, id?: unknown): Promise<void> {
  const picked = starters.find((one) => one.id === id) ?? (await pick());
  if (picked === undefined) return;
  const uri = vscode.Uri.joinPath(context.extensionUri, 'client', 'starters', picked.file);
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  const content = picked.change?.(text) ?? text;
  const document = await vscode.workspace.openTextDocument({ language: languageId, content });
  // On the first setting: whatever a command asks of the cursor's line has an answer there.
  const first = document.positionAt(content.search(/^[\w.-]+ *=/m));
  await vscode.window.showTextDocument(document, {
    viewColumn: columnForNew(),
    selection: new vscode.Range(first, first),
  });
}

/** Beside a page that is read, such as the walkthrough; else in its place. */
function columnForNew(): vscode.ViewColumn {
  const { activeTab } = vscode.window.tabGroups.activeTabGroup;
  const isPage = activeTab !== undefined && vscode.window.activeTextEditor === undefined;
  return isPage ? vscode.ViewColumn.Beside : vscode.ViewColumn.Active;
}

async function pick(): Promise<Starter | undefined> {
  return vscode.window.showQuickPick([...starters], {
    title: t('New Craft Script'),
    placeHolder: t('What comes closest to the craft on your bench?'),
  });
}
