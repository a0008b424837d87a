import { type RecordingLayout, recordingLayout } from '../catalog/model/recording-layout';
import { splitLines } from '../language/split-lines';
import { readShape } from './read-addition';

const longest = 2_000_000;

/** What a layout's file says, or the place and why it says nothing; ends a sentence. */
export type LayoutRead =
  | { readonly layout: RecordingLayout; readonly fault: null }
  | { readonly layout: null; readonly fault: string };

/** Reads `recordings/<name>.json`. */
export function layoutIn(text: string): LayoutRead {
  const shaped = readShape(text, recordingLayout, { longest, mayHaveComments: true });
  if (shaped.kind === 'broken') {
    const [first] = shaped.problems;
    const line = splitLines(text.slice(0, first?.start ?? 0)).length;
    return { layout: null, fault: `line ${line}: ${first?.message ?? 'it is damaged'}` };
  }
  return { layout: shaped.data, fault: null };
}
