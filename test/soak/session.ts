import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { sheetRequest, summaryRequest } from '../../server/src/lsp/protocol';
import { looseEdit } from '../support/craft-scripts';
import { placed } from '../support/placed';
import { withScratch } from '../support/scratch';
import { forTests, type TestServer, withOwnServer } from '../support/server';

/** What is left in the server after a forced collection. */
export interface Reading {
  readonly phase: 'edits' | 'openings';
  readonly done: number;
  readonly heap: number;
  readonly handles: number;
  readonly listeners: number;
}

export interface Soaked {
  readonly readings: readonly Reading[];
  readonly exitCode: number | null;
  /** Whether the process is there after its end. */
  readonly isLeft: boolean;
}

export interface Load {
  readonly edits: number;
  readonly openings: number;
  /** How many readings are taken in each half. */
  readonly readings: number;
  readonly onReading?: (reading: Reading) => void;
}

const demo = (name: string) => readFileSync(join(__dirname, '../demo', name), 'utf8');
const files = { 'club-habits.craft': demo('club-habits.craft'), 'main.craft': demo('sandmartin.craft') };
const probe = join(__dirname, 'probe.cjs');

/** Edits and openings by the thousand against the server that ships, with what they leave behind. */
export function soaked(load: Load): Promise<Soaked> {
  return withScratch(files, (scratch) =>
    withOwnServer(
      { folders: [scratch.uri], nodeArguments: [...forTests, '--expose-gc', '--require', probe] },
      async (server) => {
        const readings: Reading[] = [];
        const read = async (phase: Reading['phase'], done: number) => {
          const reading = { phase, done, ...(await left(server)) };
          readings.push(reading);
          load.onReading?.(reading);
        };
        await edit(server, scratch.uriOf('main.craft'), load, (done) => read('edits', done));
        await reopen(
          server,
          (index) => scratch.uriOf(`part-${index}.craft`),
          load,
          (done) => read('openings', done),
        );
        const exitCode = await server.shutDown();
        return { readings, exitCode, isLeft: isRunning(server.process.pid ?? 0) };
      },
    ),
  );
}

type Reader = (done: number) => Promise<void>;

/** Types, pastes and deletes in one script, and takes the whole text back now and then. */
async function edit(server: TestServer, uri: string, { edits, readings }: Load, read: Reader): Promise<void> {
  const document = TextDocument.create(uri, 'craft-script', 1, files['main.craft']);
  await server.open(uri, document.getText(), 1);
  const loose = fc.sample(looseEdit, { numRuns: 5000, seed: 11 });
  const stretch = Math.ceil(edits / readings);
  for (let done = 1; done <= edits; done += 1) {
    const one = loose[done % loose.length];
    if (one === undefined) continue;
    const { start, end, text } = placed(document, one);
    const change = done % 400 === 0 ? { text: files['main.craft'] } : { range: { start, end }, text };
    TextDocument.update(document, [change], done + 1);
    await server.change(uri, done + 1, change);
    if (done % 100 === 0) await server.connection.sendRequest(sheetRequest, { textDocument: { uri } });
    if (done % stretch !== 0) continue;
    // Readings compare like with like: each is taken with the same text open.
    await server.change(uri, done + 1, { text: files['main.craft'] });
    TextDocument.update(document, [{ text: files['main.craft'] }], done + 1);
    await server.connection.sendRequest(sheetRequest, { textDocument: { uri } });
    await read(done);
  }
  await server.close(uri);
}

/** Opens a script that was never open before, looks at it and closes it. */
async function reopen(
  server: TestServer,
  uriOf: (index: number) => string,
  { openings, readings }: Load,
  read: Reader,
): Promise<void> {
  const stretch = Math.ceil(openings / readings);
  for (let done = 1; done <= openings; done += 1) {
    const uri = uriOf(done);
    await server.open(uri, `${files['main.craft']}\n# script ${done}\n`, 1);
    await server.connection.sendRequest(summaryRequest, { textDocument: { uri } });
    await server.close(uri);
    if (done % stretch === 0) await read(done);
  }
}

async function left(server: TestServer): Promise<Pick<Reading, 'heap' | 'handles' | 'listeners'>> {
  // What the client remembers is none of the server's business.
  server.published.length = 0;
  server.output.length = 0;
  server.errors.length = 0;
  server.process.kill('SIGUSR2');
  for (;;) {
    const [, told] = /left: (.*)\n/.exec(Buffer.concat(server.errors).toString('utf8')) ?? [];
    if (told !== undefined) return JSON.parse(told) as Pick<Reading, 'heap' | 'handles' | 'listeners'>;
    await pause(20);
  }
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
