import { writeFile } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import { formatText } from '../features/formatting';
import { command, nameOption } from './command';
import { exitCodes } from './outcome';
import { gatherScripts } from './scripts';

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
    name: nameOption,
  },
  examples: [
    ['propsoff format', 'every script below this folder'],
    ['propsoff format --check "race/**/*.craft"', 'for a hook: exit code 1 while a script is untidy'],
  ],
  exit: { fine: 'done, or nothing to do', findings: 'with --check: a script would change' },
  run: async ({ values, positionals }, terminal) => {
    const { scripts, unreadable } = await gatherScripts({ paths: positionals, name: values.name }, terminal);
    let wouldChange = false;
    for (const { path, uri, text, mark, isPiped } of scripts) {
      const formatted = formatText(text);
      if (isPiped && values.check !== true) {
        terminal.out(mark + formatted);
        continue;
      }
      if (formatted === text) continue;
      wouldChange = true;
      if (values.check === true) terminal.out(`${path} would change\n`);
      else {
        await writeFile(URI.parse(uri).fsPath, mark + formatted);
        terminal.out(`${path} formatted\n`);
      }
    }
    for (const line of unreadable) terminal.err(`propsoff: ${line}\n`);
    if (unreadable.length > 0) return exitCodes.couldNotRun;
    return values.check === true && wouldChange ? exitCodes.findings : exitCodes.fine;
  },
});
