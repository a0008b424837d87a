import type { CancellationToken } from 'vscode-languageserver';
import { recordedFlights } from '../../features/flight/recorded';
import { measuredEdits } from '../../features/flight/use-measured';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { FlightRecorded, FlightsAsked, MeasuredToWrite, MeasuredWritten } from '../recording-protocol';
import type { Context, Served } from './row';

/** The flights of all scripts of the workspace that name a recording. */
export async function flightsRecorded(
  { session, everything }: Served,
  { recording, script }: FlightsAsked,
  token: CancellationToken,
): Promise<readonly FlightRecorded[]> {
  const crafts = await everything.crafts({ about: script, isAwaited: false }, token);
  const isAsked = (asked: string | null, uri: string) =>
    asked === null || canonicalUri(asked) === canonicalUri(uri);
  return crafts
    .filter(({ root }) => isAsked(script, root.uri))
    .flatMap((craft) =>
      recordedFlights(craft).map((one) => ({ ...one, script: session.clientUri(craft.root.uri) })),
    )
    .filter(({ uri }) => isAsked(recording, uri));
}

/** The edits that write what was measured, for the text as it stands; null where it can't be written. */
export function measuredWritten(
  { session, snapshot }: Context,
  { sets }: MeasuredToWrite,
): MeasuredWritten | null {
  const version = session.workspace.get(snapshot.uri)?.version;
  const edits = measuredEdits(snapshot, sets);
  if (version === undefined || edits === null) return null;
  return { version, edits: edits.map((edit) => session.clientEdit(snapshot.script, edit)) };
}
