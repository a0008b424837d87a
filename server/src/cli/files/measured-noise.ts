import type { RecordingColumns } from '../../catalog/model/recording-columns';
import { unfilteredNoise } from '../../recording/estimate/unfiltered';
import type { MeasuredNoise } from '../../recording/measured-noise';
import { longestFlight, openQuestions } from '../../recording/open-recording';
import type { Told } from '../../recording/report';
import { Progress } from '../report/progress';
import type { Terminal } from '../terminal';
import { openedRecording, readOpened } from './opened-recording';

/** The noise before the board's filters on the longest flight of a recording. `craft`: the script's path. */
export async function measuredNoise(
  path: string,
  craft: string,
  words: RecordingColumns,
  terminal: Terminal,
): Promise<Told<MeasuredNoise>> {
  const wanted = { path, craft: craft === '-' ? null : craft, layout: undefined, said: [], rate: undefined };
  const opened = await openedRecording(wanted, words, terminal);
  if (openQuestions(opened.table).length > 0)
    terminal.tell(
      `${path}: not all of its columns are known, and those are left out: propsoff recording ${path} --columns says which.`,
    );
  const recording = await readOpened(opened, terminal);
  const work = unfilteredNoise(recording, longestFlight(recording));
  return new Progress(terminal).through(work);
}
