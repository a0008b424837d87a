import { recordingOf } from '../../craft/flight-recording';
import { fileName } from '../../craft/include-path';
import type { CraftView } from '../../craft/view';

/** The flight of a script that a recording is of, and how a comment calls it. */
export interface RecordedOn {
  /** The section, `before-the-rain`; null where none names the recording. */
  readonly flight: string | null;
  /** `2026-06-12`; else the file. */
  readonly when: string;
}

/** `name`: of the file. */
export function flownOn(view: CraftView, name: string): RecordedOn {
  const flight = view.members('flight').find((one) => {
    const recording = recordingOf(view, one);
    return recording !== null && fileName(recording.uri) === name;
  });
  if (flight === undefined) return { flight: null, when: `in ${name}` };
  const date = view.value(`flight.${flight}.date`);
  return { flight, when: date?.kind === 'date' ? `on ${date.value}` : `in ${name}` };
}
