import { recognisedBoard } from '../board/recognise';
import type { MadeScript, Told } from '../board/to-script';
import { scriptFromBoardText } from '../board/to-script';
import { counted } from '../features/hand-over';
import { chosenProfile } from './board-choice';
import { readCapture } from './captures';
import { here } from './here';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

/** `propsoff read`: the script to standard output, the summary to standard error. */
export async function runRead(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, { board: { type: 'string' } });
  const [path] = positionals;
  if (path === undefined || positionals.length > 1) throw new UsageError('read takes one capture');
  const { additions } = await here();
  const capture = await readCapture(path, terminal);
  const profile = chosenProfile(additions.catalog, values.board, recognisedBoard(additions.catalog, capture));
  const made = scriptFromBoardText(profile, additions.catalog, capture);
  terminal.out(made.text);
  for (const line of summary(made)) terminal.err(`${visible(line)}\n`);
  return exitCodes.fine;
}

function summary({ understood, kept, unknown, repeated }: MadeScript): readonly string[] {
  const told = (what: string, lines: readonly Told[]) =>
    lines.map(({ line, text, reason }) => `  line ${line + 1}, ${what}: ${text.trim()} (${reason})`);
  return [
    `${counted(understood, 'setting')} understood, ${kept.length} kept as comments, ${counted(unknown.length, 'line')} not understood, ${repeated.length} repeated.`,
    ...told('kept', kept),
    ...told('not understood', unknown),
    ...told('repeated', repeated),
  ];
}
