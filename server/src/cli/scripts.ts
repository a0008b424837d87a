import { readdir, readFile, stat } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { URI } from 'vscode-uri';
import { isBinary, withoutMark } from '../workspace/file-host';
import { UsageError } from './outcome';
import type { Terminal } from './terminal';

/** A script to work on. */
export interface ScriptFile {
  /** As it is told to people: relative to the current folder where that is shorter. */
  readonly path: string;
  readonly uri: string;
  readonly text: string;
  /** The byte order mark that stood in front of the text; empty without one. */
  readonly mark: string;
}

export interface Gathered {
  readonly scripts: readonly ScriptFile[];
  /** A line for each file that could not be read. */
  readonly unreadable: readonly string[];
}

/**
 * Reads the scripts that the command line names: files, folders (every file below with one of the endings), `-`; the
 * current folder without a name.
 */
export async function gatherScripts(
  paths: readonly string[],
  terminal: Terminal,
  endings: readonly string[] = ['.craft'],
): Promise<Gathered> {
  const scripts: ScriptFile[] = [];
  const unreadable: string[] = [];
  for (const path of paths.length === 0 ? ['.'] : paths) {
    if (path === '-') {
      scripts.push(await fromStandardInput(terminal));
      continue;
    }
    for (const file of await filesAt(path, endings, unreadable)) {
      const read = await readScript(file);
      if (typeof read === 'string') unreadable.push(read);
      else scripts.push(read);
    }
  }
  if (scripts.length === 0 && unreadable.length === 0)
    throw new UsageError('there is no craft script here (*.craft)');
  return { scripts, unreadable };
}

async function fromStandardInput(terminal: Terminal): Promise<ScriptFile> {
  const read = parted(await terminal.readStandardInput());
  if (isBinary(read.text)) throw new UsageError('standard input is not a text');
  return { path: '-', uri: URI.file(resolve('standard-input.craft')).toString(), ...read };
}

async function filesAt(
  path: string,
  endings: readonly string[],
  unreadable: string[],
): Promise<readonly string[]> {
  try {
    const found = await stat(path);
    return found.isDirectory() ? await scriptsBelow(path, endings) : [path];
  } catch (error) {
    unreadable.push(`${path}: ${reason(error)}`);
    return [];
  }
}

async function scriptsBelow(folder: string, endings: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  const entries = await readdir(folder, { withFileTypes: true });
  for (const entry of entries.sort((one, other) => (one.name < other.name ? -1 : 1))) {
    const path = join(folder, entry.name);
    if (entry.isDirectory() && entry.name !== 'node_modules' && !entry.name.startsWith('.')) {
      found.push(...(await scriptsBelow(path, endings)));
    } else if (entry.isFile() && endings.some((ending) => entry.name.endsWith(ending))) found.push(path);
  }
  return found;
}

/** The script, or the line that says why it could not be read. */
async function readScript(file: string): Promise<ScriptFile | string> {
  const path = shown(file);
  try {
    const read = parted(decoded(await readFile(file)));
    if (isBinary(read.text)) return `${path}: it is not a text`;
    return { path, uri: URI.file(resolve(file)).toString(), ...read };
  } catch (error) {
    return `${path}: ${reason(error)}`;
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

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return 'there is no such file or folder';
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read';
  return error instanceof Error ? error.message : String(error);
}
