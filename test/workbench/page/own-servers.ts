import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { built } from '../../support/built';
import { homeVariable } from '../launch.mjs';
import type { EditorDriver } from './driver';

const server = built('server.js');

/** The servers of this build that run in an editor, by what the system says of all processes. */
export function serversRunning({ home }: EditorDriver): readonly number[] {
  const own = `${homeVariable}=${home}`;
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  return processes
    .filter((id) => saidOf(id, 'cmdline').includes(server) && saidOf(id, 'environ').includes(own))
    .map(Number);
}

function saidOf(id: string, what: 'cmdline' | 'environ'): readonly string[] {
  try {
    return readFileSync(join('/proc', id, what), 'utf8').split('\0');
  } catch {
    return []; // It has just ended.
  }
}
