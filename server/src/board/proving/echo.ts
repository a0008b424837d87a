import type { Listing } from '../listing/listing';

/**
 * Whether a capture is only what was pasted, shown back as it was typed: that proves nothing of what the board
 * holds. `pasted`: the lines that tell the board the craft, where they are of another form than its listing; null
 * where they are of the same, and nobody could tell the two apart.
 */
export function isEcho({ text, settings, echoes }: Listing, pasted: ReadonlySet<string> | null): boolean {
  if (settings.length === 0 && echoes.length > 0) return true;
  if (pasted === null) return false;
  const lines = text
    .split(/\r\n?|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const typed = lines.filter((line) => pasted.has(line)).length;
  return typed > 0 && 2 * typed >= lines.length;
}
