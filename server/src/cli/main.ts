#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { suggestWord } from '../catalog/suggest';
import type { Command } from './command';
import { exitCodes, UsageError } from './outcome';
import { nodeTerminal, type Terminal } from './terminal';
import { versionText } from './version';

// Most runs end before code that is compiled a second time, for speed, has paid for that: with Node 20 a third of the
// time on a processor went there. Later ones wait longer by themselves, and would complain of the word.
if (process.versions.node.startsWith('20.')) setFlagsFromString('--interrupt-budget=500000');

async function run(argv: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...args] = argv;
  const asked = name === '--help' || name === '-h' ? 'help' : name;
  if (asked === undefined || (asked === 'help' && args.length === 0)) {
    const [{ commands }, { overview }] = await Promise.all([import('./commands'), import('./help')]);
    await terminal.out(overview(commands.values(), terminal));
    return asked === undefined ? exitCodes.couldNotRun : exitCodes.fine;
  }
  if (asked === '--version' || asked === '-V' || asked === '-v') {
    await terminal.out(`propsoff ${versionText}\n`);
    return exitCodes.fine;
  }
  if (asked === 'help' && args.length > 1) throw new UsageError('help takes one command');
  const command = await commandNamed(asked === 'help' ? (args[0] ?? '') : asked);
  if (asked === 'help' || isHelpAsked(args)) {
    const { helpOf } = await import('./help');
    await terminal.out(helpOf(command, terminal));
    return exitCodes.fine;
  }
  return command.run(args, terminal);
}

/** A check is what hooks run again and again: it does not wait for the code of the other commands. */
async function commandNamed(name: string): Promise<Command> {
  if (name === 'check') return (await import('./commands/check')).checkCommand;
  const { commands } = await import('./commands');
  const command = commands.get(name);
  if (command !== undefined) return command;
  const near = suggestWord(commands.keys(), name);
  const instead =
    near.length > 0 ? `did you mean ${near.join(' or ')}?` : `try one of: ${[...commands.keys()].join(', ')}`;
  throw new UsageError(`there is no command "${name}"; ${instead}`);
}

/** What stands after a bare -- is a path, whatever it looks like. */
function isHelpAsked(args: readonly string[]): boolean {
  const end = args.indexOf('--');
  const options = end < 0 ? args : args.slice(0, end);
  return options.includes('--help') || options.includes('-h');
}

async function main(): Promise<void> {
  const terminal = nodeTerminal();
  try {
    process.exitCode = await run(process.argv.slice(2), terminal);
  } catch (error) {
    terminal.message(`propsoff: ${error instanceof Error ? error.message : String(error)}`);
    process.exitCode = exitCodes.couldNotRun;
  }
}

void main();
