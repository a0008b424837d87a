import { hiddenCharacter } from '../language/look-alikes';

/** Where the command line reads and writes. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** Whether colour codes do more good than harm. */
  readonly hasColour: boolean;
  readStandardInput(): Promise<string>;
}

export function nodeTerminal(): Terminal {
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    hasColour: process.stdout.isTTY === true && (process.env.NO_COLOR ?? '') === '',
    readStandardInput: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk as Uint8Array));
      return Buffer.concat(chunks).toString('utf8');
    },
  };
}

const codes = { red: 31, yellow: 33, blue: 34, grey: 90, bold: 1 } as const;

export function painted(text: string, colour: keyof typeof codes, { hasColour }: Terminal): string {
  return hasColour ? `\u001b[${codes[colour]}m${text}\u001b[0m` : text;
}

/** Text from files, made harmless for a terminal: control characters are shown, not obeyed. */
export function visible(text: string): string {
  return text.replace(new RegExp(hiddenCharacter, 'gu'), '\ufffd');
}
