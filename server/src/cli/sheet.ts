import { allFigures } from '../sheet/all-figures';
import { buildSheet } from '../sheet/build-sheet';
import { Workspace } from '../workspace/workspace';
import { here } from './here';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { gatherScripts } from './scripts';
import type { Terminal } from './terminal';

/** `propsoff sheet` */
export async function runSheet(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, { json: { type: 'boolean' }, pack: { type: 'string' } });
  if (values.json !== true) throw new UsageError('sheet writes JSON only: add --json');
  if (positionals.length !== 1) throw new UsageError('sheet takes one script');
  const { scripts, unreadable } = await gatherScripts(positionals, terminal);
  const [script] = scripts;
  if (script === undefined || scripts.length > 1)
    throw new UsageError(unreadable[0] ?? 'sheet takes one script');
  const { files, additions } = await here();
  const workspace = new Workspace({ catalog: additions.catalog, host: files });
  const { craft } = workspace.openScript(script.uri, script.text, 0);
  await workspace.settled();
  const packs = craft.packs();
  const pack = values.pack ?? packs[0] ?? null;
  if (pack !== null && !packs.includes(pack)) throw new UsageError(`the script has no pack "${pack}"`);
  const sheet = buildSheet(craft, workspace.findings(script.uri), pack);
  terminal.out(`${JSON.stringify({ ...sheet, figures: allFigures(craft) }, null, 2)}\n`);
  return exitCodes.fine;
}
