import type { Finding } from '../../checks/report/finding';
import { messageOf } from '../../checks/report/render';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import type { Workspace } from '../../workspace/workspace';
import { UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import { currentFolder, faultyAdditions, type Here, workspaceOf } from './here';
import { gatherScripts, type ScriptFile } from './scripts';

/** One script with all that it includes, for commands that work on one craft. */
export interface OneScript {
  readonly file: ScriptFile;
  readonly craft: Craft;
  readonly findings: readonly Finding[];
  /** With the pack that was asked for, or the script's first. */
  readonly view: CraftView;
  readonly around: Here;
  readonly workspace: Workspace;
}

/** The script that a command works on, as it was typed. */
export interface WantedScript {
  readonly command: string;
  readonly path: string;
  /** What standard input is called. */
  readonly name?: string | undefined;
}

export async function oneScript(
  wanted: WantedScript,
  pack: string | undefined,
  terminal: Terminal,
): Promise<OneScript> {
  const file = await oneFile(wanted, terminal);
  return openedScript(file, pack, await usable());
}

/** The one script that a path names. */
export async function oneFile(
  { command, path, name }: WantedScript,
  terminal: Terminal,
): Promise<ScriptFile> {
  const { scripts, unreadable } = await gatherScripts({ paths: [path], name }, terminal);
  const [file] = scripts;
  if (file === undefined || scripts.length > 1)
    throw new UsageError(
      unreadable[0] ?? `${command} takes one script; ${path} holds ${scripts.length} of them`,
    );
  return file;
}

/** What the current folder adds, if there is nothing wrong with it. */
export async function usable(): Promise<Here> {
  const around = await currentFolder();
  const faulty = faultyAdditions(around);
  if (faulty.length > 0)
    throw new UsageError(`${faulty[0]?.path ?? ''} has problems: propsoff check tells them`);
  return around;
}

export async function openedScript(
  file: ScriptFile,
  pack: string | undefined,
  around: Here,
): Promise<OneScript> {
  await around.additions.boardsBeside([file.uri]);
  const workspace = workspaceOf(around);
  const opened = workspace.openScript(file.uri, file.text, 0);
  await workspace.settled();
  // It is made anew once its board has been read.
  const { craft } = workspace.get(file.uri) ?? opened;
  const packs = craft.packs();
  if (pack !== undefined && !packs.includes(pack))
    throw new UsageError(`${file.path} has no pack "${pack}": ${packs.join(', ') || 'it names none'}`);
  const view = new CraftView(craft, pack ?? packs[0] ?? null);
  return { file, craft, findings: workspace.findings(file.uri), view, around, workspace };
}

/** Says of the first include that could not be read that nobody can go on without it. */
export function needsIncludes({ file, findings }: Pick<OneScript, 'file' | 'findings'>): void {
  const unread = findings.find(({ check }) => unreadIncludes.has(check.id));
  if (unread === undefined) return;
  const { script, line } = unread.place;
  throw new UsageError(
    `${file.path}:${script.lineNumber(line) + 1}: ${messageOf(unread)} ${unread.check.advice}`,
  );
}

const unreadIncludes: ReadonlySet<string> = new Set([
  'line/include-missing',
  'line/include-refused',
  'line/include-too-long',
]);
