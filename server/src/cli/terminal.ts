import { hiddenCharacter } from '../language/look-alikes';

/** Where the command line reads and writes. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** Whether colour codes do more good than harm. */
  readonly hasColour: boolean;
  /** Columns that a line may take; null where lines are not to be broken: each goes to a file or to a program whole. */
  readonly width: number | null;
  /** Whether a line on standard error can be written over: a person looks on. */
  readonly canShowProgress: boolean;
  readStandardInput(): Promise<string>;
}

type Environment = Readonly<Record<string, string | undefined>>;

/** What decides about colour and width. */
interface Stream {
  readonly isTTY?: boolean;
  readonly columns?: number;
}

export function nodeTerminal(): Terminal {
  const { stdin, stdout, stderr, env } = process;
  endWithReader(stdout);
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    hasColour: wantsColour(env, stdout),
    width: columnsOf(env, stdout),
    canShowProgress: stderr.isTTY === true && env.TERM !== 'dumb',
    readStandardInput: async () => {
      if (stdin.isTTY === true) stderr.write('Reading standard input; an end of file (Ctrl+D) ends it.\n');
      const chunks: Buffer[] = [];
      for await (const chunk of stdin) chunks.push(Buffer.from(chunk as Uint8Array));
      return Buffer.concat(chunks).toString('utf8');
    },
  };
}

/** Whoever reads the output may have read enough, as `head` does: that is no failure. */
function endWithReader(stdout: NodeJS.WriteStream): void {
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}

/** FORCE_COLOR decides where it says something, then NO_COLOR, then whether a terminal shows the text. */
export function wantsColour({ FORCE_COLOR, NO_COLOR, TERM }: Environment, stream: Stream): boolean {
  if (FORCE_COLOR !== undefined) return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false';
  if ((NO_COLOR ?? '') !== '') return false;
  return stream.isTTY === true && TERM !== 'dumb';
}

/** Narrower than this, breaking lines makes them harder to read. */
const narrowest = 40;

/** COLUMNS, where somebody exported it, else the terminal's own; null in a pipe. */
export function columnsOf({ COLUMNS }: Environment, { isTTY, columns }: Stream): number | null {
  const said = /^[1-9]\d{0,4}$/.test(COLUMNS ?? '') ? Number(COLUMNS) : undefined;
  const width = said ?? (isTTY === true ? columns : undefined);
  return width === undefined || width === 0 ? null : Math.max(narrowest, width);
}

const codes = { red: 31, yellow: 33, blue: 34, grey: 90, bold: 1 } as const;

export function painted(
  text: string,
  colour: keyof typeof codes,
  { hasColour }: Pick<Terminal, 'hasColour'>,
): string {
  return hasColour ? `\u001b[${codes[colour]}m${text}\u001b[0m` : text;
}

/** Text from files, made harmless for a terminal: control characters are shown, not obeyed. */
export function visible(text: string): string {
  return text.replace(new RegExp(hiddenCharacter, 'gu'), '\ufffd');
}
