import { type Command, type CommandHelp, command } from '../command';
import { exitCodes, UsageError } from '../outcome';
import { bashCompletions, fishCompletions, zshCompletions } from '../report/completions';

const shells: ReadonlyMap<string, (commands: readonly CommandHelp[]) => string> = new Map([
  ['bash', bashCompletions],
  ['fish', fishCompletions],
  ['zsh', zshCompletions],
]);

/** `propsoff completions`, of these commands and itself. */
export function completionsCommand(others: readonly CommandHelp[]): Command {
  const own: Command = command({
    name: 'completions',
    summary: 'prints what lets a shell complete commands and options',
    usage: [`<${[...shells.keys()].join(' | ')}>`],
    about: [
      'Prints a script for a shell, made from the same table as this help: the shell then completes commands, options and their words.',
    ],
    options: {},
    examples: [
      ['source <(propsoff completions bash)', 'in ~/.bashrc'],
      ['source <(propsoff completions zsh)', 'in ~/.zshrc, after compinit'],
      ['propsoff completions fish | source', 'in ~/.config/fish/config.fish'],
    ],
    exit: { fine: 'printed', findings: null },
    run: async ({ positionals }, terminal) => {
      const [shell = '', ...rest] = positionals;
      const script = shells.get(shell);
      if (script === undefined || rest.length > 0)
        throw new UsageError(`completions takes one shell: ${[...shells.keys()].join(', ')}`);
      await terminal.out(script([...others, own]));
      return exitCodes.fine;
    },
  });
  return own;
}
