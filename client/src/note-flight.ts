import * as vscode from 'vscode';
import type { FlightAnswer, FlightForm } from '../../server/src/lsp/flight-protocol';
import {
  type FlightNoted,
  flightAnswerRequest,
  flightFormRequest,
  noteFlightRequest,
  type ReadingsKept,
} from '../../server/src/lsp/flight-protocol';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { activeCraftScript } from './language';
import { readRecord, writeRecord } from './record';

const { t } = vscode.l10n;

/** Asks about a flight, one short question after the other, and adds its section to the script. */
export async function noteFlight(client: Client, given?: vscode.Uri): Promise<void> {
  const uri = given ?? activeCraftScript()?.document.uri;
  if (uri === undefined) {
    void vscode.window.showInformationMessage(t('Open the craft script of the flight first.'));
    return;
  }
  const today = dateOfToday();
  const record = await readRecord(uri, 'flown');
  const form = await client.request(flightFormRequest, { ...about(uri), record, today });
  if (form === null) {
    void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
    return;
  }
  if (form.isRecordBroken)
    void vscode.window.showWarningMessage(
      t(
        'The record of the last flight beside the script can’t be read. Say yourself what was changed since.',
      ),
    );
  const pack = await packOf(form);
  if (pack === undefined) return;
  const answers = await asked(client, uri, form);
  if (answers === undefined) return;
  const known = [
    { setting: 'date', typed: today },
    ...(pack === null ? [] : [{ setting: 'pack', typed: pack }]),
  ];
  const flight = { name: form.name, pack, answers: [...known, ...answers] };
  await writeFlight(uri, await client.request(noteFlightRequest, { ...about(uri), ...flight }));
}

/** 2026-05-14, where the pilot is. */
export function dateOfToday(): string {
  const today = new Date();
  return [today.getFullYear(), today.getMonth() + 1, today.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
}

/** Undefined when the pilot leaves; null for a craft without a named pack. */
async function packOf({ packs, packInView }: FlightForm): Promise<string | null | undefined> {
  if (packs.length < 2) return packs[0] ?? null;
  const items = [...packs].sort((one, other) => Number(other === packInView) - Number(one === packInView));
  return vscode.window.showQuickPick(items, {
    title: t('Note a Flight'),
    placeHolder: t('Which pack was in?'),
  });
}

/** Undefined when the pilot leaves; a question that is passed with Enter has no answer. */
async function asked(
  client: Client,
  uri: vscode.Uri,
  { questions, changed }: FlightForm,
): Promise<readonly FlightAnswer[] | undefined> {
  const all = [
    ...questions.map((question) => ({ ...question, value: '' })),
    {
      setting: 'changed',
      title: t('What was changed before it'),
      example: t('new propellers'),
      value: changed,
    },
  ];
  const answers: FlightAnswer[] = [];
  for (const [index, { setting, title, example, value }] of all.entries()) {
    const typed = await vscode.window.showInputBox({
      title: t('Note a Flight ({number} of {all}): {question}', {
        number: index + 1,
        all: all.length,
        question: title,
      }),
      prompt: t('Enter skips this question, Escape notes nothing at all.'),
      placeHolder: t('such as {example}', { example }),
      value,
      ignoreFocusOut: true,
      validateInput: async (text) =>
        text.trim() === ''
          ? null
          : client.request(flightAnswerRequest, { ...about(uri), setting, typed: text }),
    });
    if (typed === undefined) return undefined;
    if (typed.trim() !== '') answers.push({ setting, typed });
  }
  return answers;
}

/** Adds a flight's section as one edit that can be undone, shows it, and keeps what was set. */
async function writeFlight(uri: vscode.Uri, noted: FlightNoted | null): Promise<void> {
  await writeNoted(uri, noted === null ? null : { ...noted, edits: [noted] });
}

/** The same for what is written in several places. Whether it was written. */
export async function writeNoted(uri: vscode.Uri, noted: ReadingsKept | null): Promise<boolean> {
  const refusal = noted === null ? t('the script is not open any more') : await applyEdits(uri, noted);
  if (noted === null || refusal !== null) {
    void vscode.window.showWarningMessage(
      t('The flight was not noted: {reason}.', { reason: refusal ?? '' }),
    );
    return false;
  }
  await show(uri, noted.edits[0]?.newText ?? '');
  const fault = noted.record === null ? null : await writeRecord(uri, 'flown', noted.record);
  if (fault !== null)
    void vscode.window.showWarningMessage(
      t('The flight is noted, but not what was set: {reason}', { reason: fault }),
    );
  return true;
}

async function show(uri: vscode.Uri, section: string): Promise<void> {
  const document = await vscode.workspace.openTextDocument(uri);
  const line = document.positionAt(document.getText().indexOf(section.trim()));
  const selection = new vscode.Range(line, line);
  await vscode.window.showTextDocument(document, {
    selection,
    preview: false,
    viewColumn: vscode.ViewColumn.One,
  });
}
