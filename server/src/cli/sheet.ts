import { allFigures } from '../sheet/all-figures';
import { buildSheet } from '../sheet/build-sheet';
import { oneScript } from './one-script';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { sheetText } from './sheet-text';
import type { Terminal } from './terminal';

/** `propsoff sheet`: the build sheet of one script, for people or as data. */
export async function runSheet(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, { json: { type: 'boolean' }, pack: { type: 'string' } });
  const [path] = positionals;
  if (path === undefined || positionals.length > 1) throw new UsageError('sheet takes one script');
  const { craft, findings, view } = await oneScript('sheet', path, values.pack, terminal);
  const sheet = buildSheet(craft, findings, view.pack);
  terminal.out(
    values.json === true
      ? `${JSON.stringify({ ...sheet, figures: allFigures(craft) }, null, 2)}\n`
      : sheetText(sheet, terminal),
  );
  return exitCodes.fine;
}
