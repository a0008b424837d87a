import { resolveInclude } from './include-path';
import type { CraftView } from './view';

/** What the board wrote down of a flight. */
export interface FlightRecording {
  /** As the script names the file. */
  readonly path: string;
  /** The file; it need not be there. */
  readonly uri: string;
}

/** The recording that a flight names, from the script in which its line stands; null where it names none. */
export function recordingOf(view: CraftView, flight: string): FlightRecording | null {
  const setting = `flight.${flight}.recording`;
  const path = view.isSet(setting) ? view.text(setting) : null;
  const from = view.setting(setting)?.origin?.script.uri ?? view.craft.root.uri;
  const uri = path === null ? null : resolveInclude(from, path);
  return path === null || uri === null ? null : { path, uri };
}
