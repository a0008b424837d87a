import * as vscode from 'vscode';
import { type ChannelsAnswer, channelsRequest } from '../../server/src/lsp/values-protocol';
import type { PlannedChannel } from '../../server/src/sheet/find/channels';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { activeCraftScript } from './language';
import { whyNoAnswer } from './no-answer';

const { t } = vscode.l10n;

/** As many as ask for a plan together. */
const groups = ['2', '3', '4', '5', '6', '7', '8'];

/**
 * Which video channels for all who fly together with a craft, the active one or that of the build sheet: says the plan,
 * and writes the one that is picked.
 */
export async function findChannels(client: Client, given?: vscode.Uri): Promise<void> {
  const uri = given ?? activeCraftScript()?.document.uri;
  if (uri === undefined) {
    void vscode.window.showInformationMessage(
      t('Open a craft script first: it says whose radio rules hold.'),
    );
    return;
  }
  const title = t('Find Video Channels');
  const picked = await vscode.window.showQuickPick(groups, {
    title,
    placeHolder: t('How many fly together, you among them?'),
  });
  if (picked === undefined) return;
  const plan = await client.request(channelsRequest, {
    ...about(uri),
    pilots: Number(picked),
    keepsOthers: false,
  });
  if (plan === null) {
    void vscode.window.showErrorMessage(whyNoAnswer(client, t('The craft script is not open any more.')));
    return;
  }
  if (plan.channels.length === 0) {
    void vscode.window.showWarningMessage(plan.answer);
    return;
  }
  const items = plan.channels.map(({ names, frequency, edits }) => ({
    label: names.map(inWords).join(' = ') || `${frequency} MHz`,
    description: `${frequency} MHz`,
    edits,
  }));
  const own = await vscode.window.showQuickPick(items, {
    title: titleOf(title, plan),
    placeHolder: t('Which one is yours? It is written into the script.'),
  });
  if (own === undefined) return;
  const refusal = await applyEdits(uri, { version: plan.version, edits: own.edits });
  if (refusal !== null)
    void vscode.window.showWarningMessage(t('The channel was not written: {reason}.', { reason: refusal }));
}

function inWords({ band, channel }: PlannedChannel['names'][number]): string {
  return t('band {band}, channel {channel}', { band, channel });
}

/** The channels themselves stand below it. */
function titleOf(title: string, { spacing, products }: ChannelsAnswer): string {
  const apart = spacing === null ? '' : `: ${t('at least {spacing} MHz apart', { spacing })}`;
  const mixed = products === 0 ? '' : `, ${t('and what they mix to disturbs some of them')}`;
  return `${title}${apart}${mixed}`;
}
