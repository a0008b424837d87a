import * as vscode from 'vscode';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { about } from './about';
import type { Client } from './client';

/** What the walkthrough ticks off, beside commands that were run; package.json names them. */
type FirstStep = 'hasHovered' | 'hasMended' | 'hasHandedOver';

/** Tells the walkthrough that a step has been done. */
export function stepDone(step: FirstStep): void {
  void vscode.commands.executeCommand('setContext', `propsoff.${step}`, true);
}

/** Opens the walkthrough. */
export async function openFirstSteps({ extension }: vscode.ExtensionContext): Promise<void> {
  await vscode.commands.executeCommand(
    'workbench.action.openWalkthrough',
    `${extension.id}#firstCraft`,
    false,
  );
}

/** Watches for a hover that was read and for a finding that was mended, each until the first of it. */
export function watchFirstSteps(client: Client): vscode.Disposable {
  /** How many must-fix findings each script had. */
  const before = new Map<string, number>();
  const mending = client.onChecked(async (uri) => {
    const count = (await client.request(summaryRequest, about(uri)))?.counts['must-fix'];
    if (count === undefined) return;
    if (count < (before.get(uri.toString()) ?? 0)) {
      stepDone('hasMended');
      mending.dispose();
    }
    before.set(uri.toString(), count);
  });
  const closing = vscode.workspace.onDidCloseTextDocument(({ uri }) => before.delete(uri.toString()));
  const hovering = client.onHovered(() => {
    stepDone('hasHovered');
    hovering.dispose();
  });
  return vscode.Disposable.from(mending, closing, hovering);
}
