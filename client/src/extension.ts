import * as vscode from 'vscode';
import { registerCommands } from './commands';
import { Engine } from './engine';
import { SheetView } from './sheet-view';
import { StatusBar } from './status-bar';

let engine: Engine | undefined;

/** Called by the editor when a craft script is opened or a command is run. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  engine = new Engine(context);
  const sheet = new SheetView(context, engine);
  context.subscriptions.push(
    engine,
    sheet,
    new StatusBar(engine),
    vscode.window.registerWebviewViewProvider(SheetView.id, sheet),
    ...registerCommands(context, engine, sheet),
  );
  await engine.start();
}

export async function deactivate(): Promise<void> {
  await engine?.stop();
}
