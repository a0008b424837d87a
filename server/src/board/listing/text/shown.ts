import type { ListingLine } from './line';

const escapeMark = '\u001b';
const bell = '\u0007';
const backspace = '\b';

/** What a terminal acts on and a reader does not see. */
const silent: ReadonlySet<string> = new Set(['\u0000', bell, '\u000e', '\u000f', '\u007f']);

const control = /[^\P{Cc}\t]/u;

export function hasControls(text: string): boolean {
  return control.test(text);
}

/** A sequence that colours, moves or erases; it begins with an escape. */
interface Sequence {
  /** What it does: its last letter. */
  readonly what: string;
  readonly times: number;
  readonly end: number;
}

function sequenceAt(text: string, at: number): Sequence {
  const kind = text[at + 1] ?? '';
  if (kind === ']') return { what: '', times: 0, end: afterTitle(text, at + 2) };
  const isLong = kind === '[';
  const from = isLong ? at + 2 : at + 1;
  let end = from;
  while (isBetween(text[end], ' ', isLong ? '?' : '/')) end += 1;
  const isComplete = isBetween(text[end], isLong ? '@' : '0', '~');
  return {
    what: isLong && isComplete ? (text[end] ?? '') : '',
    times: Number.parseInt(text.slice(from, end), 10),
    end: isComplete ? end + 1 : end,
  };
}

function isBetween(character: string | undefined, low: string, high: string): boolean {
  return character !== undefined && character >= low && character <= high;
}

/** Behind a text for the window's title, which a bell or another escape ends. */
function afterTitle(text: string, from: number): number {
  let end = from;
  while (end < text.length && text[end] !== bell && text[end] !== escapeMark) end += 1;
  if (text[end] === escapeMark && text[end + 1] === '\\') return end + 2;
  return text[end] === bell ? end + 1 : end;
}

/** The line as a terminal shows it: sequences acted on, what was written over or erased gone. */
export function shown(line: ListingLine): ListingLine {
  const screen = new Screen();
  const { text } = line;
  for (let at = 0; at < text.length; ) {
    const character = text[at] ?? '';
    if (character === escapeMark) {
      const { what, times, end } = sequenceAt(text, at);
      screen.act(what, times);
      at = end;
      continue;
    }
    if (character === backspace) screen.act('D', 1);
    else if (!silent.has(character)) screen.write(at);
    at += 1;
  }
  return line.picked(screen.cells);
}

/** One line of a terminal: which character of the text each cell shows. */
class Screen {
  readonly cells: number[] = [];
  private cursor = 0;

  write(index: number): void {
    this.cells[this.cursor] = index;
    this.cursor += 1;
  }

  act(what: string, times: number): void {
    const steps = Number.isNaN(times) ? 1 : times;
    // The cursor never goes beyond what stands there: no cell is without a character.
    if (what === 'D') this.cursor = Math.max(0, this.cursor - steps);
    else if (what === 'C') this.cursor = Math.min(this.cells.length, this.cursor + steps);
    else if (what === 'G') this.cursor = Math.min(this.cells.length, Math.max(0, steps - 1));
    else if (what === 'K' && !(times > 0)) this.cells.length = Math.min(this.cells.length, this.cursor);
    else if (what === 'K' && times === 2) {
      this.cells.length = 0;
      this.cursor = 0;
    }
  }
}
