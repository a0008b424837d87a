import { resolve } from 'node:path';
import { URI } from 'vscode-uri';
import type { Craft } from '../../craft/craft';
import { viewFlown } from '../../features/flight/recording-beside-script';
import { measuredFlight } from '../../recording/estimate/measured-flight';
import { flightTaken } from '../../recording/flight-taken';
import type { MeasuredFlight } from '../../recording/measured-flight';
import { openQuestions } from '../../recording/open-recording';
import { Progress } from '../report/progress';
import type { Terminal } from '../terminal';
import { openedRecording, readOpened } from './opened-recording';

/**
 * What the longest flight of a recording is to be weighed by, for a craft as it was flown: with the pack of the flight
 * that names the file, else with the one that is asked for. `script`: the craft's path.
 */
export async function recordingWeighed(
  path: string,
  script: string,
  craft: Craft,
  pack: string | null,
  terminal: Terminal,
): Promise<MeasuredFlight> {
  const wanted = {
    path,
    craft: script === '-' ? null : script,
    layout: undefined,
    said: [],
    rate: undefined,
  };
  const opened = await openedRecording(wanted, craft.catalog.recordings, terminal);
  if (openQuestions(opened.table).length > 0)
    terminal.message(
      `${path}: not all of its columns are known, and those are left out: propsoff recording ${path} --columns says which.`,
    );
  const recording = await readOpened(opened, terminal);
  const view = viewFlown(craft, URI.file(resolve(path)).toString(), pack ?? craft.packs()[0] ?? null);
  return new Progress(terminal).through(measuredFlight(recording, flightTaken(recording, null) ?? 1, view));
}
