import * as vscode from 'vscode';
import { registerCommands } from './commands';
import { Engine, type NewClient } from './engine';
import { watchFirstSteps } from './first-steps';
import { hoverElsewhere } from './hover-elsewhere';
import { SheetView } from './sheet-view';
import { StatusBar } from './status-bar';

/** Starts everything, with the client that this editor can run; gives the engine, to be stopped at the end. */
export async function startPropsoff(context: vscode.ExtensionContext, newClient: NewClient): Promise<Engine> {
  const engine = new Engine(newClient);
  const sheet = new SheetView(context, engine);
  context.subscriptions.push(
    engine,
    sheet,
    new StatusBar(engine),
    vscode.window.registerWebviewViewProvider(SheetView.id, sheet),
    hoverElsewhere(engine),
    watchFirstSteps(engine),
    ...registerCommands(context, engine, sheet),
  );
  await engine.start();
  return engine;
}
