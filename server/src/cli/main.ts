import { runBenchCard } from './bench-card';
import { runBoardText } from './board-text';
import { runCheck } from './check';
import { runCompare } from './compare';
import { runExplain } from './explain';
import { runFormat } from './format';
import { helpText } from './help';
import { runLearn } from './learn';
import { exitCodes, UsageError } from './outcome';
import { runProve } from './prove';
import { runRead } from './read';
import { runServer } from './server';
import { runSheet } from './sheet';
import { nodeTerminal, type Terminal } from './terminal';

type Command = (args: readonly string[], terminal: Terminal) => Promise<number>;

/** That of the package, put in by the build. */
declare const PROPSOFF_VERSION: string;

const commands: ReadonlyMap<string, Command> = new Map([
  ['check', runCheck],
  ['format', runFormat],
  ['explain', runExplain],
  ['sheet', runSheet],
  ['board-text', runBoardText],
  ['read', runRead],
  ['prove', runProve],
  ['learn', runLearn],
  ['compare', runCompare],
  ['bench-card', runBenchCard],
  ['server', runServer],
]);

async function run(argv: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...args] = argv;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    terminal.out(helpText);
    return name === undefined ? exitCodes.couldNotRun : exitCodes.fine;
  }
  if (name === '--version' || name === '-v') {
    terminal.out(`propsoff ${PROPSOFF_VERSION}\n`);
    return exitCodes.fine;
  }
  const command = commands.get(name);
  if (command === undefined) {
    throw new UsageError(`there is no command "${name}"; try one of: ${[...commands.keys()].join(', ')}`);
  }
  if (args.includes('--help') || args.includes('-h')) {
    terminal.out(helpText);
    return exitCodes.fine;
  }
  return command(args, terminal);
}

async function main(): Promise<void> {
  const terminal = nodeTerminal();
  try {
    process.exitCode = await run(process.argv.slice(2), terminal);
  } catch (error) {
    terminal.err(`propsoff: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = exitCodes.couldNotRun;
  }
}

void main();
