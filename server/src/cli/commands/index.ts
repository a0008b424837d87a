import type { Command } from '../command';
import { benchCardCommand } from './bench-card';
import { boardTextCommand } from './board-text';
import { channelsCommand } from './channels';
import { checkCommand } from './check';
import { compareCommand } from './compare';
import { completionsCommand } from './completions';
import { explainCommand } from './explain';
import { findCommand } from './find';
import { formatCommand } from './format';
import { learnCommand } from './learn';
import { proveCommand } from './prove';
import { readCommand } from './read';
import { recordingCommand } from './recording';
import { serverCommand } from './server';
import { sheetCommand } from './sheet';

const all: readonly Command[] = [
  checkCommand,
  formatCommand,
  explainCommand,
  sheetCommand,
  compareCommand,
  findCommand,
  channelsCommand,
  benchCardCommand,
  boardTextCommand,
  readCommand,
  proveCommand,
  learnCommand,
  recordingCommand,
  serverCommand,
];

/** Every command under its name, in the order in which the help lists them. A new one is one line above. */
export const commands: ReadonlyMap<string, Command> = new Map(
  [...all, completionsCommand(all)].map((command) => [command.name, command]),
);
