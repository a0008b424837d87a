import type { Command } from '../command';
import { benchCardCommand } from './bench-card';
import { boardTextCommand } from './board-text';
import { checkCommand } from './check';
import { compareCommand } from './compare';
import { explainCommand } from './explain';
import { formatCommand } from './format';
import { learnCommand } from './learn';
import { proveCommand } from './prove';
import { readCommand } from './read';
import { serverCommand } from './server';
import { sheetCommand } from './sheet';

/** Every command under its name, in the order in which the help lists them. A new one is one line here. */
export const commands: ReadonlyMap<string, Command> = new Map(
  [
    checkCommand,
    formatCommand,
    explainCommand,
    sheetCommand,
    compareCommand,
    benchCardCommand,
    boardTextCommand,
    readCommand,
    proveCommand,
    learnCommand,
    serverCommand,
  ].map((command) => [command.name, command]),
);
