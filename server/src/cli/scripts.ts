import { readFile } from 'node:fs/promises';
import { relative, resolve } from 'node:path';
import { URI } from 'vscode-uri';
import { isBinary, withoutMark } from '../workspace/file-host';
import { UsageError } from './outcome';
import { filesAt, reasonOf } from './script-paths';
import type { Terminal } from './terminal';

/** A script to work on. */
export interface ScriptFile {
  /** As it is told to people: relative to the current folder where that is shorter. */
  readonly path: string;
  readonly uri: string;
  readonly text: string;
  /** The byte order mark that stood in front of the text; empty without one. */
  readonly mark: string;
  /** Whether it came through a pipe. */
  readonly isPiped: boolean;
}

export interface Gathered {
  readonly scripts: readonly ScriptFile[];
  /** A line for each file that could not be read, and for each pattern that nothing matched. */
  readonly unreadable: readonly string[];
}

/** What the command line named. */
export interface Wanted {
  /** Files, folders, patterns, `-`; none: the current folder. */
  readonly paths: readonly string[];
  /** What standard input is called. */
  readonly name?: string | undefined;
  /** Of the files in a folder, those with these endings. */
  readonly endings?: readonly string[];
}

/** Reads the scripts that the command line names, each once; what came through a pipe counts more than the disk. */
export async function gatherScripts(wanted: Wanted, terminal: Terminal): Promise<Gathered> {
  const { paths, name, endings = ['.craft'] } = wanted;
  if (name !== undefined && !paths.includes('-'))
    throw new UsageError('--name names standard input: add - to the paths');
  const scripts = new Map<string, ScriptFile>();
  const unreadable: string[] = [];
  const files = new Set<string>();
  for (const path of paths.length === 0 ? ['.'] : new Set(paths)) {
    const found = path === '-' ? [path] : await filesAt(path, endings);
    if (typeof found === 'string') unreadable.push(found);
    else for (const file of found) files.add(file);
  }
  for (const file of files) {
    const read = file === '-' ? await fromStandardInput(name, terminal) : await readScript(file);
    if (typeof read === 'string') unreadable.push(read);
    else if (read.isPiped || !scripts.has(read.uri)) scripts.set(read.uri, read);
  }
  if (scripts.size === 0 && unreadable.length === 0)
    throw new UsageError(`there is no craft script here (${endings.map((one) => `*${one}`).join(', ')})`);
  return { scripts: [...scripts.values()], unreadable };
}

async function fromStandardInput(name: string | undefined, terminal: Terminal): Promise<ScriptFile> {
  const read = parted(await terminal.readStandardInput());
  if (isBinary(read.text)) throw new UsageError('standard input is not a text');
  const uri = URI.file(resolve(name ?? 'standard-input.craft')).toString();
  return { path: name === undefined ? '-' : shown(name), uri, ...read, isPiped: true };
}

/** The script, or the line that says why it could not be read. */
async function readScript(file: string): Promise<ScriptFile | string> {
  const path = shown(file);
  try {
    const read = parted(decoded(await readFile(file)));
    if (isBinary(read.text)) return `${path}: it is not a text`;
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

/** Bytes as text; throws where they are not UTF-8, so that nothing is guessed and then written back. */
function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error('it is not written in UTF-8');
  }
}

/** A path for people. */
export function shown(file: string): string {
  const near = relative('', resolve(file));
  return near === '' || near.startsWith('..') ? file : near;
}
