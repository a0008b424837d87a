import { flightDate, flights } from '../../checks/rules/remember/flights';
import type { Craft } from '../../craft/craft';
import { resolveInclude } from '../../craft/include-path';
import { CraftView } from '../../craft/view';

/** A flight that names its recording. */
export interface RecordedBy {
  readonly flight: string;
  /** 2026-06-12; null where the script says none. */
  readonly date: string | null;
  /** As the script names the file. */
  readonly path: string;
  /** The file; it need not be there. */
  readonly uri: string;
}

/** The path of the setting with which a flight names its recording. */
export function recordingPath(flight: string): string {
  return `flight.${flight}.recording`;
}

/** The flights of a craft that name a recording, in the order of the script. A file is named from its own script. */
export function recordedFlights(craft: Craft): readonly RecordedBy[] {
  const view = new CraftView(craft, null);
  return flights(view).flatMap(({ name }): readonly RecordedBy[] => {
    const setting = recordingPath(name);
    const path = view.isSet(setting) ? view.text(setting) : null;
    const from = view.setting(setting)?.origin?.script.uri ?? craft.root.uri;
    const uri = path === null ? null : resolveInclude(from, path);
    if (path === null || uri === null) return [];
    return [{ flight: name, date: flightDate(view, name), path, uri }];
  });
}
