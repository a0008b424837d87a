import { resolve } from 'node:path';
import { URI } from 'vscode-uri';
import type { WorkspaceChoices } from '../../catalog/model/workspace-choices';
import { noChoices } from '../../catalog/no-choices';
import { fileText } from '../../file-system/file-text';
import { readBytes } from '../../file-system/read-file';
import { reasonOf } from '../../file-system/reasons';
import { choicesFileName } from '../../workspace/choice-files';
import { withoutMark } from '../../workspace/file-system';
import { UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import { filesAt, matching, shownPath } from './script-paths';

/** A script to work on. */
export interface ScriptFile {
  /** As it is shown to people: relative to the current folder where that is shorter. */
  readonly path: string;
  readonly uri: string;
  readonly text: string;
  /** The byte order mark that stood in front of the text; empty without one. */
  readonly mark: string;
  /** Whether it came through a pipe. */
  readonly isPiped: boolean;
}

export interface GatheredScripts {
  readonly scripts: readonly ScriptFile[];
  /** A line for each file that could not be read, and for each pattern that nothing matched. */
  readonly unreadable: readonly string[];
}

/** What the command line named. */
export interface WantedScripts {
  /** Files, folders, patterns, `-`; none: the current folder. */
  readonly paths: readonly string[];
  /** What standard input is called. */
  readonly name?: string | undefined;
  /** Of the files in a folder, those with these endings. */
  readonly endings?: readonly string[];
  /** What the current folder chooses to have read where nothing is named, and to have left out of folders. */
  readonly choices?: Pick<WorkspaceChoices, 'check' | 'leaveOut'>;
}

/** Reads the scripts that the command line names, each once; what came through a pipe counts more than the disk. */
export async function gatherScripts(wanted: WantedScripts, terminal: Terminal): Promise<GatheredScripts> {
  const { paths, name, endings = ['.craft'], choices = noChoices } = wanted;
  if (name !== undefined && !paths.includes('-'))
    throw new UsageError('--name names standard input: add - to the paths');
  const scripts = new Map<string, ScriptFile>();
  const unreadable: string[] = [];
  const files = new Set<string>();
  const unwanted = await matching(choices.leaveOut);
  const skipped = new Set<string>();
  const chosen = choices.check.length === 0 ? ['.'] : choices.check;
  for (const path of new Set(paths.length === 0 ? chosen : paths)) {
    if (path === '-') {
      files.add(path);
      continue;
    }
    const found = await filesAt(path, endings);
    unreadable.push(...found.unreadable);
    for (const file of found.files) {
      const isUnwanted = file !== path && unwanted.has(resolve(file));
      (isUnwanted ? skipped : files).add(file);
    }
    for (const other of found.leftOut)
      terminal.message(`propsoff: ${other} is a link or no file, and was left out: name it to have it read`);
  }
  if (skipped.size > 0)
    terminal.message(`propsoff: ${skipped.size} of the files here are left out, as ${choicesFileName} says`);
  for (const file of files) {
    const read = file === '-' ? await fromStandardInput(name, terminal) : await readScript(file);
    if (typeof read === 'string') unreadable.push(read);
    else if (read.isPiped || !scripts.has(read.uri)) scripts.set(read.uri, read);
  }
  if (scripts.size === 0 && unreadable.length === 0)
    throw new UsageError(`there is no craft script here (${endings.map((one) => `*${one}`).join(', ')})`);
  return { scripts: [...scripts.values()], unreadable };
}

async function fromStandardInput(name: string | undefined, terminal: Terminal): Promise<ScriptFile | string> {
  const path = name === undefined ? '-' : shownPath(name);
  try {
    const read = parted(fileText(await terminal.readStandardInput()));
    const uri = URI.file(resolve(name ?? 'standard-input.craft')).toString();
    return { path, uri, ...read, isPiped: true };
  } catch (error) {
    return `standard input: ${reasonOf(error)}`;
  }
}

/** The script, or the line that says why it could not be read. */
async function readScript(file: string): Promise<ScriptFile | string> {
  const path = shownPath(file);
  try {
    const read = parted(fileText(await readBytes(file)));
    return { path, uri: URI.file(resolve(file)).toString(), ...read, isPiped: false };
  } catch (error) {
    return `${path}: ${reasonOf(error)}`;
  }
}

/** A text and the mark in front of it, which is no part of the script and must not get lost either. */
function parted(read: string): Pick<ScriptFile, 'text' | 'mark'> {
  const text = withoutMark(read);
  return { text, mark: read.slice(0, read.length - text.length) };
}

/** A text captured from a board: a file, or standard input. */
export async function readCapture(path: string, terminal: Terminal): Promise<string> {
  try {
    const bytes = await (path === '-' ? terminal.readStandardInput() : readBytes(path));
    return withoutMark(fileText(bytes));
  } catch (error) {
    throw new UsageError(`${path === '-' ? 'standard input' : path}: ${reasonOf(error)}`);
  }
}
