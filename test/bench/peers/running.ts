import { copyFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Diagnostic, Position } from 'vscode-languageserver-protocol';
import type { EditedText } from './documents';
import { LanguageServer, type ServerOptions } from './language-server';
import { scratch } from './servers';

/** A server with its document open, in which one character comes and goes. */
export interface Running {
  readonly server: LanguageServer;
  readonly found: readonly Diagnostic[];
  readonly place: Position;
}

/** Runs something in a scratch folder with the part that the craft includes; all that was started ends with it. */
export async function inScratch<T>(
  root: string,
  run: (
    folder: string,
    start: (options: ServerOptions, text: EditedText, few: number) => Promise<Running>,
  ) => Promise<T>,
): Promise<T> {
  const folder = scratch();
  copyFileSync(join(root, 'test/demo/club-habits.craft'), join(folder, 'club-habits.craft'));
  const started: LanguageServer[] = [];
  const start = async (options: ServerOptions, { text, place }: EditedText, few: number) => {
    writeFileSync(join(folder, options.uri.slice(options.uri.lastIndexOf('/') + 1)), text);
    const server = new LanguageServer(options);
    started.push(server);
    const found = await server.open(text, ({ length }) => length >= few);
    return { server, found, place };
  };
  try {
    return await run(folder, start);
  } finally {
    await Promise.all(started.map((server) => server.end()));
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The time from an edit to the findings, which must be others than before it. */
export function edits({ server, place }: Running): (run: number) => Promise<number> {
  return async (run) => {
    const isPutIn = run % 2 === 0;
    const start = performance.now();
    await server.edit(place, isPutIn ? 0 : 1, isPutIn ? '9' : '');
    return performance.now() - start;
  };
}
