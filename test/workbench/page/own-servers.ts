import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { built } from '../../support/built';

const server = built('server.js');

/** The servers of this build that run on this machine, by what the system says of its processes. */
export function serversRunning(): readonly number[] {
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  return processes.filter((id) => commandOf(id).includes(server)).map(Number);
}

function commandOf(id: string): readonly string[] {
  try {
    return readFileSync(join('/proc', id, 'cmdline'), 'utf8').split('\0');
  } catch {
    return []; // It has just ended.
  }
}
