import { flightDate, flights } from '../../checks/rules/remember/flights';
import type { Craft } from '../../craft/craft';
import { type FlightRecording, recordingOf } from '../../craft/flight-recording';
import { resolveInclude } from '../../craft/include-path';
import { CraftView } from '../../craft/view';
import type { TextNode } from '../../language/ast';
import { stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { insideQuotes } from '../navigation/value-spans';
import { type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';

/** A flight that names its recording. */
export interface RecordedBy extends FlightRecording {
  readonly flight: string;
  /** 2026-06-12; null where the script says none. */
  readonly date: string | null;
}

/** The text with which a line names the recording of a flight; null where it names none. */
function recordingOnLine({ settingPath, statement }: ScriptLine): TextNode | null {
  if (settingPath === null || statement.kind !== 'setting' || statement.value?.kind !== 'text') return null;
  const [group, , name, ...more] = stepsOf(settingPath);
  return group === 'flight' && name === 'recording' && more.length === 0 ? statement.value : null;
}

/** A line that names a recording, with the file: it need not be there. */
interface NamedRecording {
  readonly range: Range;
  readonly uri: string;
}

/** All of them, in the order of the script. */
export function namedRecordings({ script }: Pick<Snapshot, 'script'>): readonly NamedRecording[] {
  return [...script.document.lines()].flatMap((line) => {
    const path = recordingOnLine(line);
    const uri = path === null ? null : resolveInclude(script.uri, path.value);
    if (path === null || uri === null) return [];
    return [{ range: rangeInLine(script.lineNumber(line), insideQuotes(line.text, path)), uri }];
  });
}

/** The flights of a craft that name a recording, in the order of the script. A file is named from its own script. */
export function recordedFlights(craft: Craft): readonly RecordedBy[] {
  const view = new CraftView(craft, null);
  return flights(view).flatMap(({ name }): readonly RecordedBy[] => {
    const recording = recordingOf(view, name);
    return recording === null ? [] : [{ flight: name, date: flightDate(view, name), ...recording }];
  });
}

/** The last flight that names a recording, by its date; of those of a day, or without one, the one that is written last. */
export function lastRecorded(craft: Craft): RecordedBy | null {
  const byDate = [...recordedFlights(craft)].sort((one, other) =>
    (one.date ?? '') < (other.date ?? '') ? -1 : (one.date ?? '') > (other.date ?? '') ? 1 : 0,
  );
  return byDate.at(-1) ?? null;
}
