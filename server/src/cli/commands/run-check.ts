import { URI } from 'vscode-uri';
import { boardReading } from '../../board/layer/reading';
import type { Catalog } from '../../catalog/catalog';
import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { fileName, resolveInclude } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import { currentFolder, faultyAdditions, type Here, withBoards, workspaceOf } from '../files/here';
import { shownPath } from '../files/script-paths';
import { gatherScripts, type ScriptFile } from '../files/scripts';
import { UsageError } from '../outcome';
import { boardTextEnding, checkedBoardText } from '../report/checked-board-text';
import { type CheckedFile, checkedScript } from '../report/checked-file';
import { Progress } from '../report/progress';
import type { Terminal } from '../terminal';
import { namedBoard } from './board-choice';

/** What is to be checked, as it was typed. */
export interface CheckRequest {
  readonly paths: readonly string[];
  readonly name: string | undefined;
  readonly pack: string | undefined;
  readonly board: string | undefined;
  /** Whether the report has fixes: each may cost a guess. */
  readonly hasFixes: boolean;
}

/** What a check found. */
export interface Checked {
  readonly files: readonly CheckedFile[];
  readonly unreadable: readonly string[];
  /** The URIs of the scripts that were checked and of all that they include, also of what is missing. */
  readonly read: readonly string[];
  /** What the findings are known by. */
  readonly catalog: Catalog;
}

/** Reads and checks all that was asked for, from the disk as it is now. */
export async function checkOnce(request: CheckRequest, terminal: Terminal): Promise<Checked> {
  const { paths, name } = request;
  const endings = ['.craft', boardTextEnding];
  const { scripts, unreadable } = await gatherScripts({ paths, name, endings }, terminal);
  const around = await currentFolder();
  const { files, read } = await checkAll(scripts, request, terminal, around);
  const { catalog } = around.additions;
  return { files: [...faultyAdditions(around), ...files], unreadable, read, catalog };
}

async function checkAll(
  scripts: readonly ScriptFile[],
  { pack, board, hasFixes }: CheckRequest,
  terminal: Terminal,
  around: Here,
): Promise<Pick<Checked, 'files' | 'read'>> {
  await around.additions.boardsBeside(scripts.map(({ uri }) => uri));
  if (board !== undefined) await namedBoard(around, board);
  const workspace = workspaceOf(around, (what, error) =>
    terminal.tell(`propsoff: ${what} failed and was left out: ${String(error)}`),
  );
  const packs = new Set<string>();
  const read = new Set<string>();
  const isAskedFor = (finding: Finding) => pack === undefined || (finding.pack ?? pack) === pack;
  // One after the other: what one craft took to be computed is free again before the next.
  const one = async ({ uri, path, text }: ScriptFile) => {
    const isBoardText = board !== undefined || path.endsWith(boardTextEnding);
    if (isBoardText) {
      const origin = { fileName: fileName(uri), picked: board ?? null };
      // So that all profiles have been read which may be its.
      await withBoards(around, (catalog) => boardReading().profileOfText(text, { ...origin, catalog }));
    }
    if (workspace.catalog !== around.additions.catalog) workspace.useCatalog(around.additions.catalog);
    const opened = isBoardText
      ? workspace.openBoardText(uri, text, 0, board)
      : workspace.openScript(uri, text, 0);
    await workspace.settled();
    // It is made anew once its board has been read.
    const { craft } = workspace.get(uri) ?? opened;
    for (const name of craft.packs()) packs.add(name);
    for (const other of readBy(craft)) read.add(other);
    const pathFor = (other: string) => (other === uri ? path : shownUri(other));
    const findings = workspace.findings(uri).filter(isAskedFor);
    const layer = workspace.layer(uri);
    const layerOf = (other: string) => workspace.layer(other);
    const sources = { pathFor, layerOf, catalog: workspace.catalog };
    const file =
      isBoardText && layer !== undefined
        ? checkedBoardText(path, craft.readAs(), layer, findings, workspace.catalog)
        : checkedScript(path, craft.readAs(), findings, sources, hasFixes);
    workspace.close(uri);
    return file;
  };
  const checked = await new Progress(terminal).over(scripts, one);
  if (pack !== undefined) refuseUnknownPack([...packs], pack);
  return { files: checked, read: [...read] };
}

/** A script and whatever it includes, whether it is there or not. */
function readBy(craft: Craft): readonly string[] {
  return craft.layers().layers.flatMap(({ script }) => [
    script.uri,
    ...script.lines(inputKeys.include).flatMap(({ statement }) => {
      const uri = statement.kind === 'include' ? resolveInclude(script.uri, statement.path.value) : null;
      return uri ?? [];
    }),
  ]);
}

function refuseUnknownPack(packs: readonly string[], pack: string): void {
  if (packs.includes(pack)) return;
  const known = packs.length === 0 ? 'they name none' : `they name ${packs.join(', ')}`;
  throw new UsageError(`none of the scripts has a pack "${pack}": ${known}`);
}

/** A script's URI as a path for people. */
function shownUri(uri: string): string {
  return shownPath(URI.parse(uri).fsPath);
}
