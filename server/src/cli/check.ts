import { URI } from 'vscode-uri';
import type { Finding } from '../checks/finding';
import { Workspace } from '../workspace/workspace';
import { type CheckedFile, checkedScript } from './checked-file';
import { countsOf } from './counts';
import { faultyAdditions, type Here, here } from './here';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { jsonReport } from './report-json';
import { textReport } from './report-text';
import { gatherScripts, type ScriptFile, shown } from './scripts';
import type { Terminal } from './terminal';

/** `propsoff check` */
export async function runCheck(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    json: { type: 'boolean' },
    strict: { type: 'boolean' },
    pack: { type: 'string' },
  });
  const { scripts, unreadable } = await gatherScripts(positionals, terminal);
  const around = await here();
  const checked = [
    ...faultyAdditions(around),
    ...(await checkAll(scripts, values.pack ?? null, terminal, around)),
  ];
  terminal.out(values.json === true ? jsonReport(checked) : textReport(checked, terminal));
  for (const line of unreadable) terminal.err(`propsoff: ${line}\n`);
  if (unreadable.length > 0) return exitCodes.couldNotRun;
  const counts = countsOf(checked);
  const isBad = counts['must-fix'] > 0 || (values.strict === true && counts.risk > 0);
  return isBad ? exitCodes.findings : exitCodes.fine;
}

async function checkAll(
  scripts: readonly ScriptFile[],
  pack: string | null,
  terminal: Terminal,
  { files, additions }: Here,
): Promise<readonly CheckedFile[]> {
  const workspace = new Workspace({
    catalog: additions.catalog,
    host: files,
    onFault: (what, error) => terminal.err(`propsoff: ${what} failed and was left out: ${String(error)}\n`),
  });
  for (const { uri, text } of scripts) workspace.openScript(uri, text, 0);
  await workspace.settled();
  if (pack !== null) refuseUnknownPack(workspace, pack);
  const isAskedFor = (finding: Finding) => pack === null || (finding.pack ?? pack) === pack;
  return scripts.map(({ uri, path }) => {
    const pathFor = (other: string) => (other === uri ? path : shownUri(other));
    return checkedScript(path, workspace.findings(uri).filter(isAskedFor), pathFor);
  });
}

function refuseUnknownPack(workspace: Workspace, pack: string): void {
  const packs = [...new Set(workspace.all().flatMap(({ craft }) => craft.packs()))];
  if (packs.includes(pack)) return;
  const known = packs.length === 0 ? 'they name none' : `they name ${packs.join(', ')}`;
  throw new UsageError(`none of the scripts has a pack "${pack}": ${known}`);
}

/** A script's URI as a path for people. */
function shownUri(uri: string): string {
  return shown(URI.parse(uri).fsPath);
}
