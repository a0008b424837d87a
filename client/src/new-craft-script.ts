import * as vscode from 'vscode';
import type { Client } from './client';
import { languageId } from './language';
import { withSlips } from './practice';
import { makeCraftScript } from './read-capture';
import { scriptFromSalesPage } from './sales-page';

const { t } = vscode.l10n;

interface Starter extends vscode.QuickPickItem {
  /** By which a link or a key binding names it. */
  readonly id: string;
  /** Text for the new script; undefined when the pilot leaves it, or a way of its own has opened one. */
  readonly text: (context: vscode.ExtensionContext, client: Client) => Promise<string | undefined>;
}

function fromFile(file: string, change = (text: string) => text): Starter['text'] {
  return async ({ extensionUri }) => {
    const uri = vscode.Uri.joinPath(extensionUri, 'client', 'starters', file);
    return change(new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)));
  };
}

const starters: readonly Starter[] = [
  {
    id: 'first-craft.craft',
    label: t('First craft'),
    description: t('five inches, four cells'),
    detail: t('The lines that every craft needs, each with its reason'),
    text: fromFile('first-craft.craft'),
  },
  {
    id: 'racer.craft',
    label: t('Racer'),
    description: t('five inches, six cells'),
    detail: t('Light and quick, a steep camera'),
    text: fromFile('racer.craft'),
  },
  {
    id: 'freestyle.craft',
    label: t('Freestyle'),
    description: t('five inches, six cells'),
    detail: t('Fine in the middle of the sticks, room for mistakes'),
    text: fromFile('freestyle.craft'),
  },
  {
    id: 'hall-craft.craft',
    label: t('Hall craft'),
    description: t('palm-sized, one or two cells'),
    detail: t('Light, gentle, indoors'),
    text: fromFile('hall-craft.craft'),
  },
  {
    id: 'long-flight.craft',
    label: t('Long flight'),
    description: t('seven inches, position receiver and log'),
    detail: t('Efficient packs, a way home, a record'),
    text: fromFile('long-flight.craft'),
  },
  {
    id: 'sales-page',
    label: t('From a sales page…'),
    description: t('size, kv, cells, propeller'),
    detail: t('Shows hover, thrust and minutes at once, and says what to measure'),
    text: (_context, client) => scriptFromSalesPage(client),
  },
  {
    id: 'captured-text',
    label: t('From a captured text…'),
    description: t('what a board has printed'),
    detail: t('The settings that a board has already, as a script'),
    text: async (_context, client) => {
      await makeCraftScript(client);
      return undefined;
    },
  },
  {
    id: 'practice',
    label: t('Practice craft'),
    description: t('the first craft with three slips'),
    detail: t('To find and to mend; nothing for a real board'),
    text: fromFile('first-craft.craft', withSlips),
  },
];

/**
 * Lets the pilot pick a starter and opens it as a new script that is saved nowhere yet. A link or a key binding
 * may name the starter at once.
 */
export async function newCraftScript(
  context: vscode.ExtensionContext,
  client: Client,
  id?: unknown,
): Promise<void> {
  const picked = starters.find((one) => one.id === id) ?? (await pick());
  const content = await picked?.text(context, client);
  if (content === undefined) return;
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
