import * as vscode from 'vscode';
import type { AcceptanceChange } from '../../server/src/lsp/board-protocol';
import { explainRequest, packInViewNotification, summaryRequest } from '../../server/src/lsp/protocol';
import { about, aboutPlace } from './about';
import { acceptBeside } from './accept-beside';
import { openBenchCard } from './bench-card';
import { BoardPreview } from './board-preview';
import { checkFiles } from './check-files';
import type { Client } from './client';
import { compareScripts } from './compare-scripts';
import { copyForBoard } from './copy-for-board';
import { explainCheck } from './explain-check';
import { Explanations } from './explanations';
import { nameOf } from './file-name';
import { findChannels } from './find-channels';
import { findValue } from './find-value';
import { openFirstSteps, stepDone } from './first-steps';
import { activeScript } from './language';
import { editProfile, sayMeaning, sayMeanings } from './learn-panel';
import { newCraftScript } from './new-craft-script';
import { whyNoAnswer } from './no-answer';
import { noteFlight } from './note-flight';
import { openRecording } from './open-recording';
import { pickBoardOfText } from './pick-board';
import { Proofs } from './prove-capture';
import { makeCraftScript } from './read-capture';
import type { RecordingsSaid } from './recordings-said';
import type { SheetView } from './sheet-view';
import { teachingOfLines } from './teach-line';
import { tryValue } from './try-value';
import { useAsBoardText } from './use-as-board-text';

const { t } = vscode.l10n;

/** Every command that the editor's palette offers. */
export function registerCommands(
  context: vscode.ExtensionContext,
  client: Client,
  sheet: SheetView,
  said: RecordingsSaid,
): readonly vscode.Disposable[] {
  const register = vscode.commands.registerCommand;
  const explanations = new Explanations();
  const proofs = new Proofs(client, explanations);
  const preview = new BoardPreview(client);
  return [
    explanations,
    proofs,
    preview,
    ...teachingOfLines(client),
    register('propsoff.copyForBoard', () => copyForBoard(client)),
    register('propsoff.previewBoardText', () => preview.open()),
    register('propsoff.makeCraftScript', () => makeCraftScript(client)),
    register('propsoff.compareWithCapture', () => proofs.compare()),
    register('propsoff.clearProof', () => proofs.clear()),
    register('propsoff.checkFiles', checkFiles),
    register('propsoff.openBenchCard', () => openBenchCard(context, client)),
    register('propsoff.compareScripts', () => compareScripts(context, client)),
    register('propsoff.useAsBoardText', (file) => useAsBoardText(client, file)),
    register('propsoff.sayMeanings', () => sayMeanings(context, client)),
    register('propsoff.sayMeaning', (uri: string, key: string) => sayMeaning(context, client, uri, key)),
    register('propsoff.acceptBeside', (uri: string, change: AcceptanceChange) =>
      acceptBeside(client, uri, change),
    ),
    register('propsoff.editProfile', () => editProfile(context, client)),
    register('propsoff.pickBoardOfText', () => pickBoardOfText(client)),
    register('propsoff.tryValue', (...given) => tryValue(client, sheet, ...given)),
    register('propsoff.findValue', () => findValue(context, client)),
    register('propsoff.findChannels', () => findChannels(client)),
    register('propsoff.openRecording', (file) => openRecording(context, client, said, file)),
    register('propsoff.noteFlight', () => noteFlight(client)),
    register('propsoff.startChecks', () => client.startAgain()),
    register('propsoff.showLog', () => client.log.show()),
    register('propsoff.firstCraft', () => openFirstSteps(context)),
    register('propsoff.newCraftScript', (file) => newCraftScript(context, client, file)),
    register('propsoff.showBuildSheet', () => vscode.commands.executeCommand('propsoff.buildSheet.focus')),
    register('propsoff.pickPack', () => pickPack(client)),
    register('propsoff.explainCheck', (check) => explainCheck(client, explanations, check)),
    register('propsoff.explainLine', () => explainLine(client, explanations)),
  ];
}

async function pickPack(client: Client): Promise<void> {
  const uri = activeScript()?.document.uri;
  const summary = uri === undefined ? null : await client.request(summaryRequest, about(uri));
  if (uri === undefined || summary === null) {
    const why = t('Open a craft script first: packs belong to a craft.');
    void vscode.window.showInformationMessage(uri === undefined ? why : whyNoAnswer(client, why));
    return;
  }
  if (summary.packs.length === 0) {
    void vscode.window.showInformationMessage(
      t('This craft names no pack yet. Add a section such as [pack.sprint].'),
    );
    return;
  }
  const picked = await vscode.window.showQuickPick([...summary.packs], {
    title: t('Pack in View'),
    placeHolder: t('In view now: {pack}', { pack: summary.packInView ?? '' }),
  });
  if (picked !== undefined)
    await client.notify(packInViewNotification, { uri: uri.toString(), pack: picked });
}

/** Opens the whole story of the line under the cursor beside the script. */
async function explainLine(client: Client, explanations: Explanations): Promise<void> {
  const editor = activeScript();
  if (editor === undefined) {
    void vscode.window.showInformationMessage(t('Put the cursor on a line of a craft script first.'));
    return;
  }
  const { active } = editor.selection;
  const story = await client.request(explainRequest, aboutPlace(editor.document.uri, active));
  if (story === null) {
    const why = t('There is nothing to explain on this line. Put the cursor on a setting or a section.');
    void vscode.window.showInformationMessage(whyNoAnswer(client, why));
    return;
  }
  const name = nameOf(editor.document.uri);
  stepDone('hasHovered');
  await explanations.show(t('line {line} of {name}', { line: active.line + 1, name }), story);
}
