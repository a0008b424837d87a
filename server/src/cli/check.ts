import { URI } from 'vscode-uri';
import type { Finding } from '../checks/finding';
import { Workspace } from '../workspace/workspace';
import { chosenProfile } from './board-choice';
import { boardTextEnding, checkedBoardText, translatedText } from './checked-board-text';
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
    board: { type: 'string' },
  });
  const { scripts, unreadable } = await gatherScripts(positionals, terminal, ['.craft', boardTextEnding]);
  const around = await here();
  const checked = [...faultyAdditions(around), ...(await checkAll(scripts, values, terminal, around))];
  terminal.out(values.json === true ? jsonReport(checked) : textReport(checked, terminal));
  for (const line of unreadable) terminal.err(`propsoff: ${line}\n`);
  if (unreadable.length > 0) return exitCodes.couldNotRun;
  const counts = countsOf(checked);
  const isBad = counts['must-fix'] > 0 || (values.strict === true && counts.risk > 0);
  return isBad ? exitCodes.findings : exitCodes.fine;
}

async function checkAll(
  scripts: readonly ScriptFile[],
  {
    pack,
    board,
    json = false,
  }: {
    readonly pack?: string | undefined;
    readonly board?: string | undefined;
    readonly json?: boolean | undefined;
  },
  terminal: Terminal,
  { files, additions }: Here,
): Promise<readonly CheckedFile[]> {
  const workspace = new Workspace({
    catalog: additions.catalog,
    host: files,
    onFault: (what, error) => terminal.err(`propsoff: ${what} failed and was left out: ${String(error)}\n`),
  });
  const { catalog } = additions;
  if (board !== undefined) chosenProfile(catalog, board, null);
  const packs = new Set<string>();
  const isAskedFor = (finding: Finding) => pack === undefined || (finding.pack ?? pack) === pack;
  const checked: CheckedFile[] = [];
  // One after the other: what one craft took to be computed is free again before the next.
  for (const { path, uri, text } of scripts) {
    const isBoardText = board !== undefined || path.endsWith(boardTextEnding);
    const translation = isBoardText ? translatedText(catalog, text, board ?? null) : null;
    const { craft } = workspace.openScript(uri, isBoardText ? (translation?.script ?? '') : text, 0);
    await workspace.settled();
    for (const name of craft.packs()) packs.add(name);
    const findings = workspace.findings(uri).filter(isAskedFor);
    const pathFor = (other: string) => (other === uri ? path : shownUri(other));
    if (isBoardText) checked.push(checkedBoardText(path, translation, findings, catalog));
    else checked.push(checkedScript(path, findings, pathFor, json));
    workspace.close(uri);
  }
  if (pack !== undefined) refuseUnknownPack([...packs], pack);
  return checked;
}

function refuseUnknownPack(packs: readonly string[], pack: string): void {
  if (packs.includes(pack)) return;
  const known = packs.length === 0 ? 'they name none' : `they name ${packs.join(', ')}`;
  throw new UsageError(`none of the scripts has a pack "${pack}": ${known}`);
}

/** A script's URI as a path for people. */
function shownUri(uri: string): string {
  return shown(URI.parse(uri).fsPath);
}
