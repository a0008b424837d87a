import { spawnSync } from 'node:child_process';
import { built } from './built';

export interface Surroundings {
  readonly input?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** What a person's shell may say about terminals is no part of a test. */
export function plainEnvironment(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const { NO_COLOR, FORCE_COLOR, COLUMNS, ...rest } = process.env;
  return { ...rest, ...more };
}

/** Runs the built command line to its end. */
export function propsoff(args: readonly string[], { input = '', cwd, env }: Surroundings = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [built('propsoff.js'), ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1e9,
    env: plainEnvironment(env),
    ...(cwd === undefined ? {} : { cwd }),
  });
  return { status, stdout, stderr };
}
