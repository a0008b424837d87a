import * as vscode from 'vscode';
import { registerCommands } from './commands';
import { EditorClient, type NewLanguageClient } from './editor-client';
import { showSheetAtFirst } from './first-sight';
import { watchFirstSteps } from './first-steps';
import { hoverElsewhere } from './hover-elsewhere';
import { LanguageStatus } from './language-status';
import { RecordingsSaid } from './recordings-said';
import { watchScriptInSight } from './script-in-sight';
import { SheetView } from './sheet-view';
import { StatusBar } from './status-bar';

/** Starts everything; gives the client, to be stopped at the end. `newLanguageClient`: makes one that this editor can run. */
export async function startPropsoff(
  context: vscode.ExtensionContext,
  newLanguageClient: NewLanguageClient,
): Promise<EditorClient> {
  const client = new EditorClient(newLanguageClient);
  const said = new RecordingsSaid(context.workspaceState);
  const sheet = new SheetView(context, client, said);
  context.subscriptions.push(
    client,
    said,
    sheet,
    new StatusBar(client),
    new LanguageStatus(client),
    vscode.window.registerWebviewViewProvider(SheetView.id, sheet),
    hoverElsewhere(client),
    watchFirstSteps(client),
    watchScriptInSight(),
    showSheetAtFirst(),
    ...registerCommands(context, client, sheet, said),
  );
  await client.start();
  return client;
}
