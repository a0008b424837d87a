import { URI } from 'vscode-uri';
import { formatText } from '../../features/formatting/formatting';
import { reasonOf } from '../../file-system/reasons';
import { replaceFile } from '../../file-system/replace-file';
import { command, nameOption } from '../command';
import { gatherScripts, type ScriptFile } from '../files/scripts';
import { exitCodes } from '../outcome';
import { visible } from '../report/visible';

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
    const failed = [...unreadable];
    let wouldChange = false;
    for (const script of scripts) {
      const { path, text, mark, isPiped } = script;
      const formatted = formatText(text);
      if (isPiped && values.check !== true) {
        await terminal.out(mark + formatted);
        continue;
      }
      if (formatted === text) continue;
      wouldChange = true;
      if (values.check === true) {
        await terminal.out(`${visible(path)} would change\n`);
        continue;
      }
      const why = await written(script, formatted);
      if (why === null) await terminal.out(`${visible(path)} formatted\n`);
      else failed.push(`${path} was left as it was: ${why}`);
    }
    for (const line of failed) terminal.tell(`propsoff: ${line}`);
    if (failed.length > 0) return exitCodes.couldNotRun;
    return values.check === true && wouldChange ? exitCodes.findings : exitCodes.fine;
  },
});

/** Why a script could not be written; null where it was. */
async function written({ uri, mark, text }: ScriptFile, formatted: string): Promise<string | null> {
  try {
    await replaceFile(URI.parse(uri).fsPath, mark + text, mark + formatted);
    return null;
  } catch (error) {
    return reasonOf(error, 'written');
  }
}
