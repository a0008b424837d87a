import type { MadeScript } from '../../board/layer/make-script';
import { counted } from './hand-over';

/** What became of the lines of a capture, a line each; the counts first. */
export function readSummary({ understood, own, left }: MadeScript): readonly string[] {
  return [
    `${counted(understood, 'setting')} understood, ${own} kept as the board's own, ${counted(left.length, 'line')} not understood.`,
    ...left.map(({ line, text, reason }) => `  line ${line + 1}: ${text.trim()} (${reason})`),
  ];
}
