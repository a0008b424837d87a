import { formatText } from '../../features/formatting/formatting';
import { command, nameOption } from '../command';
import { written } from '../files/mend';
import { gatherScripts } from '../files/scripts';
import { exitCodes, UsageError } from '../outcome';
import { visible } from '../report/visible';
import type { Terminal } from '../terminal';

/** `propsoff format` */
export const formatCommand = command({
  name: 'format',
  summary: 'lines values and comments up',
  usage: ['[paths | patterns | -] [options]'],
  about: [
    'Lines values and comments up, in place: files, folders (every .craft below them), patterns, or the current folder. Only blanks change. - reads standard input and writes to standard output.',
  ],
  options: {
    check: { type: 'boolean', about: 'changes nothing, tells which scripts would change' },
    diff: { type: 'boolean', about: 'changes nothing, shows what would change, as a unified diff' },
    quiet: { type: 'boolean', about: 'does not name the scripts that it formats' },
    name: nameOption,
  },
  examples: [
    ['propsoff format', 'every script below this folder'],
    ['propsoff format --check "race/**/*.craft"', 'for a hook: exit code 1 while a script is untidy'],
    ['propsoff format --diff my.craft', 'what would change, before it does'],
  ],
  exit: { fine: 'done, or nothing to do', findings: 'with --check or --diff: a script would change' },
  run: async ({ values, positionals }, terminal) => {
    const { check = false, diff = false, quiet = false, name } = values;
    if (check && diff)
      throw new UsageError('--diff is --check that shows what would change: say one of them');
    const { scripts, unreadable } = await gatherScripts({ paths: positionals, name }, terminal);
    const failed = [...unreadable];
    let wouldChange = false;
    for (const script of scripts) {
      const { path, text, mark, isPiped } = script;
      const formatted = formatText(text);
      if (isPiped && !check && !diff) {
        await terminal.out(mark + formatted);
        continue;
      }
      if (formatted === text) continue;
      wouldChange = true;
      if (check || diff) {
        await terminal.out(
          diff ? await diffText(path, text, formatted, terminal) : `${visible(path)} would change\n`,
        );
        continue;
      }
      const why = await written(script, formatted);
      if (why !== null) failed.push(`${path} was left as it was: ${why}`);
      else if (!quiet) await terminal.out(`${visible(path)} formatted\n`);
    }
    for (const line of failed) terminal.message(`propsoff: ${line}`);
    if (failed.length > 0) return exitCodes.couldNotRun;
    return (check || diff) && wouldChange ? exitCodes.findings : exitCodes.fine;
  },
});

/** What parts two texts of a file; loaded when somebody wants to see it. */
async function diffText(path: string, before: string, after: string, terminal: Terminal): Promise<string> {
  const { unifiedDiff } = await import('../report/unified-diff');
  return unifiedDiff(path, before, after, terminal);
}
