import * as vscode from 'vscode';
import type { FlightAsked } from '../../server/src/lsp/learn-protocol';
import { type FlightRecorded, recordedFlightsRequest } from '../../server/src/lsp/recording-protocol';
import type { Client } from './client';
import { nameOf } from './file-name';

const { t } = vscode.l10n;

/** Endings that columns of text come with. */
const endings = ['csv', 'tsv', 'txt'];
const isRecordingName = /\.(?:csv|tsv|txt)$/i;
/** More nobody picks from. */
const most = 300;

interface RecordingItem extends vscode.QuickPickItem {
  readonly uri?: vscode.Uri;
}

/** The file in the active editor, where it may be a recording. */
export function activeRecording(): vscode.Uri | undefined {
  const uri = vscode.window.activeTextEditor?.document.uri;
  return uri !== undefined && isRecordingName.test(uri.path) ? uri : undefined;
}

/** A recording that the pilot picks: one that a script names, one of the workspace, or any file. `except`: not that one. */
export async function pickRecording(
  client: Client,
  title: string,
  except?: vscode.Uri,
): Promise<vscode.Uri | undefined> {
  const choices = await choicesFor(client, except);
  if (choices.length === 1) return anyFile(title);
  const picked = await vscode.window.showQuickPick(choices, { title, matchOnDescription: true });
  if (picked === undefined) return undefined;
  return picked.uri ?? anyFile(title);
}

/** A flight of a script that names its recording; null: none was picked. A text: why there is none, in a sentence. */
export async function pickFlight(client: Client, title: string): Promise<FlightAsked | string | null> {
  const named = (await client.request(recordedFlightsRequest, { recording: null, script: null })) ?? [];
  if (named.length === 0)
    return t(
      'No flight of a script names a recording: open the recording and write it into its flight first.',
    );
  const choices = named.map((one) => ({ ...flightChoice(one), one }));
  const picked = await vscode.window.showQuickPick(choices, {
    title,
    placeHolder: t('The flight that was flown with this text on the board'),
    matchOnDescription: true,
  });
  if (picked === undefined) return null;
  const { script, flight, uri } = picked.one;
  return { script, flight, recording: uri };
}

async function choicesFor(client: Client, except: vscode.Uri | undefined): Promise<readonly RecordingItem[]> {
  const named = (await client.request(recordedFlightsRequest, { recording: null, script: null })) ?? [];
  const files = await recordingFiles();
  const seen = new Set(except === undefined ? [] : [except.toString()]);
  const once = ({ uri }: { readonly uri: vscode.Uri }) => {
    if (seen.has(uri.toString())) return false;
    seen.add(uri.toString());
    return true;
  };
  return [
    ...named.map(flightChoice).filter(once),
    ...files
      .map((uri) => ({ label: nameOf(uri), description: vscode.workspace.asRelativePath(uri), uri }))
      .filter(once),
    { label: t('Another File…'), description: t('columns of text from any logger') },
  ];
}

function flightChoice({ uri, flight, date, path, script }: FlightRecorded) {
  return {
    label: path,
    description: [date, flight, nameOf(vscode.Uri.parse(script))].filter((one) => one !== null).join(', '),
    uri: vscode.Uri.parse(uri),
  };
}

/** Other file systems need not be searchable, and the editor then waits for a search that never comes. */
async function recordingFiles(): Promise<readonly vscode.Uri[]> {
  const folders = (vscode.workspace.workspaceFolders ?? []).filter(({ uri }) =>
    ['file', 'vscode-remote'].includes(uri.scheme),
  );
  const found = await Promise.all(
    folders.map((folder) =>
      vscode.workspace.findFiles(
        new vscode.RelativePattern(folder, '**/*.{csv,tsv}'),
        '**/{.*,node_modules}/**',
        most,
      ),
    ),
  );
  return found.flat().slice(0, most);
}

async function anyFile(title: string): Promise<vscode.Uri | undefined> {
  const picked = await vscode.window.showOpenDialog({
    title,
    canSelectMany: false,
    filters: { [t('Columns of Text')]: endings },
  });
  return picked?.[0];
}
