import type { MadeScript, Told } from '../../board/to-script';
import { counted } from './hand-over';

/** What became of the lines of a capture, a line each; the counts first. */
export function readSummary({ understood, kept, unknown, repeated }: MadeScript): readonly string[] {
  const told = (what: string, lines: readonly Told[]) =>
    lines.map(({ line, text, reason }) => `  line ${line + 1}, ${what}: ${text.trim()} (${reason})`);
  return [
    `${counted(understood, 'setting')} understood, ${kept.length} kept as comments, ${counted(unknown.length, 'line')} not understood, ${repeated.length} repeated.`,
    ...told('kept', kept),
    ...told('not understood', unknown),
    ...told('repeated', repeated),
  ];
}
