import { writeFile } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import { formatText } from '../features/formatting';
import { readOptions } from './options';
import { exitCodes } from './outcome';
import { gatherScripts } from './scripts';
import type { Terminal } from './terminal';

/** `propsoff format` */
export async function runFormat(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, { check: { type: 'boolean' } });
  const { scripts, unreadable } = await gatherScripts(positionals, terminal);
  let wouldChange = false;
  for (const { path, uri, text, mark } of scripts) {
    const formatted = formatText(text);
    const isSame = formatted === text;
    if (path === '-' && values.check !== true) {
      terminal.out(mark + formatted);
      continue;
    }
    if (isSame) continue;
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
}
