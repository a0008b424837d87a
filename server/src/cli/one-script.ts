import type { Finding } from '../checks/finding';
import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import { Workspace } from '../workspace/workspace';
import { faultyAdditions, type Here, here } from './here';
import { UsageError } from './outcome';
import { gatherScripts, type ScriptFile } from './scripts';
import type { Terminal } from './terminal';

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

export async function oneScript(
  command: string,
  path: string,
  pack: string | undefined,
  terminal: Terminal,
): Promise<OneScript> {
  const file = await oneFile(command, path, terminal);
  return openedScript(file, pack, await usable());
}

/** The one script that a path names. */
export async function oneFile(command: string, path: string, terminal: Terminal): Promise<ScriptFile> {
  const { scripts, unreadable } = await gatherScripts([path], terminal);
  const [file] = scripts;
  if (file === undefined || scripts.length > 1)
    throw new UsageError(unreadable[0] ?? `${command} takes one script`);
  return file;
}

/** What the current folder adds, if there is nothing wrong with it. */
export async function usable(): Promise<Here> {
  const around = await here();
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
  const workspace = new Workspace({ catalog: around.additions.catalog, host: around.files });
  const { craft } = workspace.openScript(file.uri, file.text, 0);
  await workspace.settled();
  const packs = craft.packs();
  if (pack !== undefined && !packs.includes(pack))
    throw new UsageError(`${file.path} has no pack "${pack}": ${packs.join(', ') || 'it names none'}`);
  const view = new CraftView(craft, pack ?? packs[0] ?? null);
  return { file, craft, findings: workspace.findings(file.uri), view, around, workspace };
}
