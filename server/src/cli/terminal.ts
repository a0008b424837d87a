import { fstatSync } from 'node:fs';
import type { Level } from '../catalog/model/check';
import { longestFile, TooLongFile, tooLong } from '../workspace/file-system';
import { exitCodes, UsageError } from './outcome';
import { type Write, writerTo } from './output';
import { visible } from './report/visible';

/** Where the command line reads and writes. */
export interface Terminal {
  /** What was asked for, to standard output. Rejects where it could not be written whole. */
  readonly out: Write;
  /** One line for a person, to standard error. What others wrote is made harmless. */
  message(line: string): void;
  /** To standard error as it is: a line that is written over again and again. */
  show(text: string): void;
  /** Whether colour codes do more good than harm. */
  readonly hasColour: boolean;
  /** Columns that a line may take; null where lines are not to be broken: each goes to a file or to a program whole. */
  readonly width: number | null;
  /** Whether a line on standard error can be written over: a person looks on. */
  readonly canShowProgress: boolean;
  /** Rejects with a reason for a person, which ends a sentence. */
  readStandardInput(): Promise<Uint8Array>;
}

type Environment = Readonly<Record<string, string | undefined>>;

/** What decides about colour and width. */
interface Stream {
  readonly isTTY?: boolean;
  readonly columns?: number;
}

export function nodeTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  const writeError = writerTo(stderr);
  const show = (text: string) => void writeError(text).catch(endAsFailed);
  return {
    out: writerTo(stdout),
    message: (line) => show(`${visible(line)}\n`),
    show,
    hasColour: wantsColour(env, stdout),
    width: columnsOf(env, stdout),
    canShowProgress: stderr.isTTY === true && env.TERM !== 'dumb',
    readStandardInput: async () => {
      // Only here: Node makes the stream as it is asked for, which takes a while.
      const { stdin } = process;
      if (stdin.isTTY === true) show('Reading standard input; an end of file (Ctrl+D) ends it.\n');
      // Node takes a folder for a stream that ends at once.
      if (fstatSync(stdin.fd).isDirectory()) throw new Error('it is a folder');
      return allOf(stdin);
    },
  };
}

/** Nobody is left to be told, but the exit code tells it. */
function endAsFailed(): void {
  process.once('exit', () => (process.exitCode = exitCodes.couldNotRun));
}

async function allOf(stream: AsyncIterable<unknown>): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of stream) {
    if (!(chunk instanceof Uint8Array)) throw new Error('it gives no bytes');
    chunks.push(chunk);
    length += chunk.length;
    if (length > longestFile) throw new TooLongFile(tooLong);
  }
  return Buffer.concat(chunks);
}

/** FORCE_COLOR decides where it says something, then NO_COLOR, then whether a terminal shows the text. */
export function wantsColour({ FORCE_COLOR, NO_COLOR, TERM }: Environment, stream: Stream): boolean {
  if (FORCE_COLOR !== undefined) return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false';
  if ((NO_COLOR ?? '') !== '') return false;
  return stream.isTTY === true && TERM !== 'dumb';
}

/** The same terminal with or without colour, as somebody typed it. */
export function colourWhen(terminal: Terminal, when: string): Terminal {
  if (when === 'auto') return terminal;
  if (when !== 'always' && when !== 'never')
    throw new UsageError(`--color takes always, never or auto, not "${when}"`);
  return { ...terminal, hasColour: when === 'always' };
}

/** Narrower than this, breaking lines makes them harder to read. */
const narrowest = 40;

/** COLUMNS, where somebody exported it, else the terminal's own; null in a pipe. */
export function columnsOf({ COLUMNS }: Environment, { isTTY, columns }: Stream): number | null {
  const said = /^[1-9]\d{0,4}$/.test(COLUMNS ?? '') ? Number(COLUMNS) : undefined;
  const width = said ?? (isTTY === true ? columns : undefined);
  return width === undefined || width === 0 ? null : Math.max(narrowest, width);
}

export const levelColours: Readonly<Record<Level, keyof typeof codes>> = {
  'must-fix': 'red',
  risk: 'yellow',
  note: 'blue',
  tidy: 'grey',
};

const codes = { red: 31, green: 32, yellow: 33, blue: 34, grey: 90, bold: 1 } as const;

export function painted(
  text: string,
  colour: keyof typeof codes,
  { hasColour }: Pick<Terminal, 'hasColour'>,
): string {
  return hasColour ? `\u001b[${codes[colour]}m${text}\u001b[0m` : text;
}
