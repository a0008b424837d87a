import * as vscode from 'vscode';
import type { EmptyState } from '../sheet/messages';

const { t } = vscode.l10n;

/** The build sheet while no craft script is open. */
export const noScript: EmptyState = {
  text: t(
    'No craft script is open. With one, the build sheet answers a pilot’s questions about the craft: can it fly, what is wired where, which pack does what.',
  ),
  ways: [
    { command: 'propsoff.newCraftScript', title: t('New Craft Script') },
    { command: 'propsoff.firstCraft', title: t('First Craft in Ten Minutes') },
    { command: 'workbench.action.quickOpen', given: '.craft', title: t('Open a Script of This Folder') },
    { command: 'propsoff.makeCraftScript', title: t('Make One from a Board’s Text') },
  ],
};

/** The build sheet while the checks are not running and will not come back by themselves. */
export const stopped: EmptyState = {
  text: t(
    'Propsoff’s checks are not running in this window. The log “Propsoff” in the output view says why.',
  ),
  ways: [
    { command: 'propsoff.startChecks', title: t('Start the Checks Again') },
    { command: 'propsoff.showLog', title: t('Show the Log') },
  ],
};

/** Does what the page asks for, of what it was given: a page can't have any command run. */
export async function goWay(command: string): Promise<void> {
  const way = [...noScript.ways, ...stopped.ways].find((one) => one.command === command);
  if (way !== undefined) await vscode.commands.executeCommand(way.command, ...(way.given ? [way.given] : []));
}
