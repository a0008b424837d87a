import * as vscode from 'vscode';
import { setHereRequest } from '../../server/src/lsp/protocol';
import type { SettingToTry } from '../../server/src/lsp/values-protocol';
import { aboutPlace } from './about';
import type { Client } from './client';
import { activeCraftScript } from './language';
import type { SheetView } from './sheet-view';

const { t } = vscode.l10n;

/**
 * Opens the trial of a setting in the build sheet: that of the cursor's line, or one of those that a code lens
 * offers.
 */
export async function tryValue(
  client: Client,
  sheet: SheetView,
  given?: string,
  offered: readonly string[] = [],
  pack: string | null = null,
): Promise<void> {
  const editor = activeCraftScript();
  const uri = typeof given === 'string' ? vscode.Uri.parse(given) : editor?.document.uri;
  if (uri === undefined) {
    void vscode.window.showInformationMessage(t('Put the cursor on a setting of a craft script first.'));
    return;
  }
  const setting = offered.length > 0 ? await oneOf(offered, pack) : await underCursor(client, editor);
  if (setting === undefined) return;
  if (setting === null) {
    void vscode.window.showInformationMessage(
      t('This line sets nothing. Put the cursor on a setting first.'),
    );
    return;
  }
  await sheet.tryValue(uri, setting);
}

async function oneOf(paths: readonly string[], pack: string | null): Promise<SettingToTry | undefined> {
  const picked =
    paths.length === 1
      ? paths[0]
      : await vscode.window.showQuickPick([...paths], { title: t('Which value?') });
  return picked === undefined ? undefined : { path: picked, pack };
}

async function underCursor(
  client: Client,
  editor: vscode.TextEditor | undefined,
): Promise<SettingToTry | null> {
  if (editor === undefined) return null;
  return client.request(setHereRequest, aboutPlace(editor.document.uri, editor.selection.active));
}
