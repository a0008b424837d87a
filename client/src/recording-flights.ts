import * as vscode from 'vscode';
import {
  grownRequest,
  type RecordingFinding,
  type RecordingReported,
  recordedFlightsRequest,
} from '../../server/src/lsp/recording-protocol';
import { shakingOf } from '../recording/brief';
import type { FlightNoise } from '../recording/messages';
import type { Client } from './client';
import { nameOf } from './file-name';
import type { RecordingReader } from './recording-reader';

/** The flights of a script that name a recording, the earliest first, each as it is told; null where it was stopped. */
export async function flightNoises(
  client: Client,
  reader: RecordingReader,
  script: vscode.Uri,
): Promise<readonly FlightNoise[] | null> {
  const asked = { recording: null, script: script.toString() };
  const named = (await client.request(recordedFlightsRequest, asked)) ?? [];
  const flights: FlightNoise[] = [];
  for (const flight of [...named].sort((one, other) => order(one.date, other.date))) {
    const answer = await reader.read({ uri: vscode.Uri.parse(flight.uri), flight: null });
    if (answer === null) return null;
    if (answer.kind === 'told') flights.push({ flight, reported: answer, why: null });
    else
      flights.push({
        flight,
        reported: null,
        why: answer.kind === 'refused' ? answer.message : notConfirmed(),
      });
  }
  return flights;
}

/** What has grown from each flight to the next. */
export async function grownIn(
  client: Client,
  flights: readonly { readonly name: string; readonly reported: RecordingReported }[],
): Promise<readonly RecordingFinding[]> {
  const inOrder = flights.map(({ name, reported }) => ({ name, ...shakingOf(reported.report) }));
  return (await client.request(grownRequest, { flights: inOrder })) ?? [];
}

/** What has grown since the script's last flight before this recording of which it is known how it shook. */
export async function grownSinceLast(
  client: Client,
  script: vscode.Uri,
  now: { readonly uri: vscode.Uri; readonly reported: RecordingReported },
  before: (recording: string) => ReturnType<typeof shakingOf> | undefined,
): Promise<readonly RecordingFinding[]> {
  const named =
    (await client.request(recordedFlightsRequest, { recording: null, script: script.toString() })) ?? [];
  const own = named.find(({ uri }) => sameUri(uri, now.uri))?.date ?? null;
  const earlier = named
    .filter(({ date }) => own !== null && date !== null && date < own)
    .sort((one, other) => order(other.date, one.date));
  for (const { uri, path } of earlier) {
    const shaking = before(vscode.Uri.parse(uri).toString());
    if (shaking === undefined) continue;
    const flights = [
      { name: path, ...shaking },
      { name: nameOf(now.uri), ...shakingOf(now.reported.report) },
    ];
    return (await client.request(grownRequest, { flights })) ?? [];
  }
  return [];
}

function sameUri(one: string, other: vscode.Uri): boolean {
  return vscode.Uri.parse(one).toString() === other.toString();
}

/** Whether another recording was flown later, as far as scripts tell. */
export async function isLater(client: Client, own: vscode.Uri, other: vscode.Uri): Promise<boolean> {
  const named = await client.request(recordedFlightsRequest, { recording: null, script: null });
  const dateOf = (uri: vscode.Uri) => named?.find((one) => sameUri(one.uri, uri))?.date ?? null;
  const [before, after] = [dateOf(own), dateOf(other)];
  return before !== null && after !== null && before < after;
}

export function notConfirmed(): string {
  return vscode.l10n.t('What its columns hold is not confirmed yet: open that recording by itself.');
}

/** Those without a date come last. */
function order(one: string | null, other: string | null): number {
  return (one ?? '9').localeCompare(other ?? '9');
}
