import type { URI } from 'vscode-uri';
import { pickOne } from './ask';
import { commands } from './host/commands';
import { closeText } from './host/documents';
import { keptUri, thePage } from './host/page';
import { showView } from './host/panels';
import { showPreview, window } from './host/vscode';

/** Commands of an editor's own that our client runs, and what they come to on this page. */
export function registerBuiltIns(sheet: string): void {
  const register = commands.registerCommand;
  register(`${sheet}.focus`, () => {
    showView(sheet);
  });
  register('workbench.actions.view.problems', () => thePage().shell.at('findings'));
  register('workbench.action.revertAndCloseActiveEditor', () => {
    const { active } = thePage().texts;
    if (active !== null) closeText(active);
  });
  register('markdown.showPreviewToSide', (uri: URI) => showPreview(uri));
  register('workbench.action.quickOpen', (ending: string) => openKept(ending));
  // The tour of an editor's welcome page: here the first craft itself, which says why each line is there.
  register('workbench.action.openWalkthrough', () =>
    commands.executeCommand('propsoff.newCraftScript', 'first-craft.craft'),
  );
}

async function openKept(ending: string): Promise<void> {
  const paths = thePage()
    .store.paths()
    .filter((path) => path.endsWith(ending));
  const path = await pickOne(
    'Open a Script',
    paths.map((label) => ({ label, pick: label })),
  );
  if (path !== undefined) await window.showTextDocument(keptUri(path));
}
