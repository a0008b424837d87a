import { spawn, spawnSync } from 'node:child_process';
import { closeSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { built } from './built';
import { makeNamedPipe, Scratch } from './scratch';

export interface Surroundings {
  readonly input?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** What a person's shell may say about terminals is no part of a test. */
export function plainEnvironment(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const { NO_COLOR, FORCE_COLOR, COLUMNS, ...rest } = process.env;
  return { ...rest, ...more };
}

/** Runs the built command line to its end, in a process of its own. */
export function propsoffProcess(args: readonly string[], { input = '', cwd, env }: Surroundings = {}): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [built('propsoff.js'), ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1e9,
    env: plainEnvironment(env),
    ...(cwd === undefined ? {} : { cwd }),
  });
  return { status, stdout, stderr };
}

/**
 * Runs the built command line to its end, as `propsoffProcess` does, in a process that runs it again and again: for
 * tests of what it says and writes. How a process begins, ends and stands to its streams is no matter of these.
 */
export function propsoff(args: readonly string[], { input = '', cwd, env }: Surroundings = {}): Ended {
  running ??= start();
  return running({ args, input, cwd, env: plainEnvironment(env) });
}

/** The arguments of a line that somebody types, if a shell does no more with it than to take its quotes off. */
export function plainArguments(line: string): readonly string[] | null {
  const plain = /^propsoff( (?:[\w./:=-]+|"[^"$`\\!]*"|'[^']*'))+$/;
  if (!plain.test(line)) return null;
  const words = line.matchAll(/ (?:"([^"]*)"|'([^']*)'|([^ ]+))/g);
  return [...words].map(([, double, single, bare]) => double ?? single ?? bare ?? '');
}

let running: ReturnType<typeof start> | undefined;

/** The two talk by named pipes, which both wait for where Node's own would have to be listened to. */
function start() {
  const scratch = new Scratch();
  const [questions, answers] = [scratch.file('questions'), scratch.file('answers')];
  for (const path of [questions, answers]) makeNamedPipe(path);
  // Opened for both ways a pipe does not wait for somebody at its other end.
  const ask = openSync(questions, 'r+');
  const both = openSync(answers, 'r+');
  const theirs = [openSync(questions, 'r'), openSync(answers, 'w')];
  const listen = openSync(answers, 'r');
  const runner = join(__dirname, 'one-after-another.cjs');
  const child = spawn(process.execPath, [runner, built('propsoff.js')], {
    stdio: ['ignore', 'ignore', 'inherit', ...theirs],
  });
  child.unref();
  // Whoever holds a pipe open would not learn that the other is gone.
  for (const one of [both, ...theirs]) closeSync(one);
  rmSync(scratch.path, { recursive: true });
  return (question: object): Ended => {
    const bytes = Buffer.from(`${JSON.stringify(question)}\n`);
    for (let at = 0; at < bytes.length; ) at += writeSync(ask, bytes, at);
    return JSON.parse(nextLine(listen)) as Ended;
  };
}

function nextLine(pipe: number): string {
  const chunks: Buffer[] = [];
  const chunk = Buffer.alloc(65_536);
  do {
    const length = readSync(pipe, chunk);
    if (length === 0) {
      running = undefined;
      throw new Error('the process that runs the command line is gone');
    }
    chunks.push(Buffer.from(chunk.subarray(0, length)));
  } while (chunks.at(-1)?.at(-1) !== 10);
  return Buffer.concat(chunks).toString();
}
