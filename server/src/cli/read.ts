import { recognisedBoard } from '../board/recognise';
import { scriptFromBoardText } from '../board/to-script';
import { readSummary } from '../features/read-summary';
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
  for (const line of readSummary(made)) terminal.err(`${visible(line)}\n`);
  return exitCodes.fine;
}
