import { URI } from 'vscode-uri';
import type { Catalog } from '../catalog/catalog';
import type { Finding } from '../checks/finding';
import { countByLevel } from '../checks/order';
import { NodeFiles } from '../host/node-files';
import { Workspace } from '../workspace/workspace';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { jsonReport } from './report-json';
import { textReport } from './report-text';
import { gatherScripts, type ScriptFile, shown } from './scripts';
import type { Terminal } from './terminal';

/** What was found in one script. */
export interface Checked {
  readonly script: ScriptFile;
  readonly findings: readonly Finding[];
}

/** `propsoff check` */
export async function runCheck(
  args: readonly string[],
  terminal: Terminal,
  catalog: Catalog,
): Promise<number> {
  const { values, positionals } = readOptions(args, {
    json: { type: 'boolean' },
    strict: { type: 'boolean' },
    pack: { type: 'string' },
  });
  const { scripts, unreadable } = await gatherScripts(positionals, terminal);
  const checked = await checkAll(scripts, values.pack ?? null, terminal, catalog);
  const report =
    values.json === true ? jsonReport(checked, shownUri) : textReport(checked, terminal, shownUri);
  terminal.out(report);
  for (const line of unreadable) terminal.err(`propsoff: ${line}\n`);
  if (unreadable.length > 0) return exitCodes.couldNotRun;
  const counts = countByLevel(checked.flatMap(({ findings }) => findings));
  const isBad = counts['must-fix'] > 0 || (values.strict === true && counts.risk > 0);
  return isBad ? exitCodes.findings : exitCodes.fine;
}

async function checkAll(
  scripts: readonly ScriptFile[],
  pack: string | null,
  terminal: Terminal,
  catalog: Catalog,
): Promise<readonly Checked[]> {
  const workspace = new Workspace({
    catalog,
    host: new NodeFiles([URI.file(process.cwd()).toString()]),
    onFault: (what, error) => terminal.err(`propsoff: ${what} failed and was left out: ${String(error)}\n`),
  });
  for (const { uri, text } of scripts) workspace.openScript(uri, text, 0);
  await workspace.settled();
  if (pack !== null) refuseUnknownPack(workspace, pack);
  return scripts.map((script) => ({
    script,
    findings: workspace
      .findings(script.uri)
      .filter((finding) => pack === null || (finding.pack ?? pack) === pack),
  }));
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
