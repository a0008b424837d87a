import type { Frame } from '../listing';

const most = 4;

/** The forms of lines that stand before or after the settings of a text, to know them again. */
export function framesOf(frames: readonly Frame[], text: string, settings: number): readonly string[] {
  const forms = frames.flatMap(({ at }) => frameForm(text.slice(at.start, at.end), settings) ?? []);
  return [...new Set(forms)].slice(0, most);
}

/** A line that is the same each time, but for how many settings there are; null for one with other numbers. */
function frameForm(line: string, settings: number): string | null {
  const numbers = line.match(/\d+/g) ?? [];
  if (numbers.length === 0) return line.length > 120 || /[{}]/.test(line) ? null : line;
  const [only] = numbers;
  if (numbers.length > 1 || only !== String(settings) || line.length > 120) return null;
  const at = line.indexOf(only);
  // The count is a word of its own: `66 settings`, `(66)`, not `v66`.
  if (/[\p{L}.]/u.test((line[at - 1] ?? '') + (line[at + only.length] ?? '').replace('.', ''))) return null;
  return `${line.slice(0, at)}{count}${line.slice(at + only.length)}`;
}
