import { type CheckedSide, compare } from '../sheet/compare/compare';
import { comparisonText } from './compare-text';
import { type OneScript, oneFile, openedScript, usable } from './one-script';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import type { ScriptFile } from './scripts';
import type { Terminal } from './terminal';

/** `propsoff compare`: what differs between two scripts, or two packs of one, and what each difference does. */
export async function runCompare(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    pack: { type: 'string', multiple: true },
    json: { type: 'boolean' },
  });
  const packs = values.pack ?? [];
  const [first, second] = positionals;
  if (first === undefined || positionals.length > 2 || packs.length > 2)
    throw new UsageError('compare takes two scripts, or one script and two packs');
  if (second === undefined && packs.length < 2)
    throw new UsageError('compare takes a second script, or two packs: --pack <one> --pack <other>');
  if (first === '-' && second === '-') throw new UsageError('only one of the two can be standard input');
  const around = await usable();
  const one = await oneFile('compare', first, terminal);
  const other = second === undefined ? one : await oneFile('compare', second, terminal);
  const before = await openedScript(beside(one, other), packs[0], around);
  const after = await openedScript(beside(other, one), packs[1] ?? packs[0], around);
  const result = compare(sideOf(before, one), sideOf(after, other), (craft) => before.workspace.check(craft));
  terminal.out(
    values.json === true
      ? `${JSON.stringify({ version: 1, ...result }, null, 2)}\n`
      : comparisonText(result, terminal),
  );
  return exitCodes.fine;
}

/** Standard input stands where the other script does, so that both include the same files. */
function beside(script: ScriptFile, other: ScriptFile): ScriptFile {
  return script.path === '-' ? { ...script, uri: other.uri } : script;
}

function sideOf({ craft, view, findings }: OneScript, { path }: ScriptFile): CheckedSide {
  const file = path === '-' ? 'standard input' : path;
  return { craft, pack: view.pack, findings, file };
}
