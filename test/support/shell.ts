import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { built } from './built';
import { plainEnvironment } from './command-line';
import type { Scratch } from './scratch';

/** A shell in a folder in which `propsoff` is a command, and in which git knows who commits. */
export function shellIn(scratch: Scratch) {
  scratch.write('.bin/propsoff', `#!/bin/sh\nexec "${process.execPath}" "${built('propsoff.js')}" "$@"\n`);
  chmodSync(scratch.file('.bin/propsoff'), 0o755);
  const [name, email] = ['Whinchat', 'whinchat@example.org'];
  const env = plainEnvironment({
    PATH: `${scratch.file('.bin')}:${process.env.PATH ?? ''}`,
    GIT_AUTHOR_NAME: name,
    GIT_AUTHOR_EMAIL: email,
    GIT_COMMITTER_NAME: name,
    GIT_COMMITTER_EMAIL: email,
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_NOSYSTEM: '1',
  });
  return (line: string) => spawnSync('sh', ['-c', line], { cwd: scratch.path, encoding: 'utf8', env });
}
