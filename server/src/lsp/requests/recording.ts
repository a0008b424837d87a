import { measuredEdits } from '../../features/flight/use-measured';
import type { MeasuredToWrite, MeasuredWritten } from '../recording-protocol';
import type { Context } from './row';

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
