import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import type { Bench } from './group';
import { against, interleaved, type Measure } from './measure';
import { LanguageServer, type ServerOptions } from './peers/language-server';
import { inScratch } from './peers/running';
import { echo, ours } from './peers/servers';

const goal = 1.5;
const craft = 'wagtail.craft';

/** From the start of the process to the findings of a demo craft, all that it includes read. */
export async function startMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  const text = readFileSync(join(root, 'test/demo', craft), 'utf8');
  return inScratch(root, async (folder) => {
    const wanted = await settledFindings(ours(folder), text);
    const isWanted = (found: readonly Diagnostic[]) => JSON.stringify(found) === wanted;
    const canned = { diagnostics: JSON.parse(wanted) as Diagnostic[], hover: null, completion: null };
    const other = await echo(folder, canned);
    const started = (options: ServerOptions) => async () => {
      const begun = performance.now();
      const server = new LanguageServer(options);
      await server.open(text, isWanted);
      const ms = performance.now() - begun;
      await server.end();
      return ms;
    };
    const [mine, theirs] = await interleaved(runs(30, 5), [started(ours(folder)), started(other)]);
    if (mine === undefined || theirs === undefined) throw new Error('nothing was measured');
    return [against('start to first findings, demo craft', mine, 'echo server in a bundle', theirs, goal)];
  });
}

/** The findings once everything has been read: those after an edit that changes nothing. */
async function settledFindings(options: ServerOptions, text: string): Promise<string> {
  const server = new LanguageServer(options);
  try {
    let found = JSON.stringify(await server.open(text, () => true));
    for (;;) {
      const next = JSON.stringify(await server.edit({ line: 0, character: 0 }, 0, ''));
      if (next === found) return found;
      found = next;
    }
  } finally {
    await server.end();
  }
}
