import { URI } from 'vscode-uri';
import { boardReading } from '../../board/layer/reading';
import type { Catalog } from '../../catalog/catalog';
import type { WorkspaceChoices } from '../../catalog/model/workspace-choices';
import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { fileName, resolveInclude } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import { besideFileOf } from '../../workspace/kept-beside';
import type { Workspace } from '../../workspace/workspace';
import { currentFolder, faultyAdditions, type Here, withBoards, workspaceOf } from '../files/here';
import { mendedText, written } from '../files/mend';
import { shownPath } from '../files/script-paths';
import { gatherScripts, type ScriptFile } from '../files/scripts';
import { UsageError } from '../outcome';
import { boardTextEnding, checkedBoardText } from '../report/checked-board-text';
import { type CheckedFile, checkedScript } from '../report/checked-file';
import { Progress } from '../report/progress';
import type { Terminal } from '../terminal';
import { namedBoard } from './board-choice';

interface Mending {
  /** Whether of a finding with several fixes the first is made. */
  readonly takesFirst: boolean;
}

/** What is to be checked, as it was typed. */
export interface CheckRequest {
  readonly paths: readonly string[];
  readonly name: string | undefined;
  readonly pack: string | undefined;
  readonly board: string | undefined;
  /** Whether the report has fixes: each may cost a guess. */
  readonly hasFixes: boolean;
  /** Which fixes are made before the report; null: none. */
  readonly mending: Mending | null;
}

/** What a check found. */
export interface Checked {
  readonly files: readonly CheckedFile[];
  readonly unreadable: readonly string[];
  /** The URIs of the scripts that were checked and of all that they include, also of what is missing. */
  readonly read: readonly string[];
  /** What the findings are known by. */
  readonly catalog: Catalog;
  /** A line for each file that was mended. */
  readonly mended: readonly string[];
  /** What the current folder chooses. */
  readonly choices: WorkspaceChoices;
}

/** Reads and checks all that was asked for, from the disk as it is now. */
export async function checkOnce(request: CheckRequest, terminal: Terminal): Promise<Checked> {
  const { paths, name } = request;
  const endings = ['.craft', boardTextEnding];
  const around = await currentFolder();
  const { choices } = around.additions;
  const { scripts, unreadable } = await gatherScripts({ paths, name, endings, choices }, terminal);
  const { mended, unmended, ...now } = await mendAll(scripts, request, terminal, around);
  const { files, read } = await checkAll(now.scripts, request, terminal, around);
  const { catalog } = around.additions;
  const all = [...faultyAdditions(around), ...files];
  return { files: all, unreadable: [...unreadable, ...unmended], read, catalog, mended, choices };
}

async function checkAll(
  scripts: readonly ScriptFile[],
  { pack, board, hasFixes }: CheckRequest,
  terminal: Terminal,
  around: Here,
): Promise<Pick<Checked, 'files' | 'read'>> {
  await around.additions.boardsBeside(scripts.map(({ uri }) => uri));
  if (board !== undefined) await namedBoard(around, board);
  const workspace = workspaceIn(around, terminal);
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
    const sources = { pathFor, layer: (other: string) => workspace.layer(other), catalog: workspace.catalog };
    const file =
      isBoardText && layer !== undefined
        ? checkedBoardText(path, craft.readAs(), layer, findings, workspace.catalog)
        : checkedScript(path, craft, findings, sources, hasFixes);
    workspace.close(uri);
    return file;
  };
  const checked = await new Progress(terminal).over(scripts, one);
  if (pack !== undefined) refuseUnknownPack([...packs], pack);
  return { files: checked, read: [...read] };
}

function workspaceIn(around: Here, terminal: Terminal): Workspace {
  return workspaceOf(around, (what, error) =>
    terminal.message(`propsoff: ${what} failed and was left out: ${String(error)}`),
  );
}

/** The scripts as they are once their fixes are made, with a line for each file that was mended or left as it was. */
interface Mendings {
  readonly scripts: readonly ScriptFile[];
  readonly mended: readonly string[];
  readonly unmended: readonly string[];
}

/** All are mended before one is checked: they may include each other. */
async function mendAll(
  scripts: readonly ScriptFile[],
  { mending, board }: CheckRequest,
  terminal: Terminal,
  around: Here,
): Promise<Mendings> {
  if (mending === null) return { scripts, mended: [], unmended: [] };
  const [now, mended, unmended]: [ScriptFile[], string[], string[]] = [[], [], []];
  const workspace = workspaceIn(around, terminal);
  for (const script of scripts) {
    const { path, uri } = script;
    const isBoardText = board !== undefined || path.endsWith(boardTextEnding);
    const { text, titles } = isBoardText
      ? { ...script, titles: [] }
      : await mendedText(workspace, script, mending.takesFirst);
    const why = isBoardText
      ? 'it is a board’s own text: its editor offers the fixes'
      : await written(script, text);
    if (why !== null) unmended.push(`${path} was left as it was: ${why}`);
    else mended.push(...titles.map((title) => `${path} mended: ${title}`));
    now.push(why === null ? { ...script, text } : script);
    workspace.close(uri);
    workspace.diskChanged(uri);
  }
  return { scripts: now, mended, unmended };
}

/** A script and whatever it includes, with what is kept beside a board's text, whether it is there or not. */
function readBy(craft: Craft): readonly string[] {
  return craft.layers().layers.flatMap(({ script }) => [
    script.uri,
    ...(script.isBoardText ? [besideFileOf(script.uri)] : []),
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
