import { strict as assert } from 'node:assert';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { built } from '../../support/built';
import { openEditor } from './driver';

const server = built('server.js');

/** How many servers of this build run on this machine, by what the system says of its processes. */
function serversRunning(): number {
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  return processes.filter((id) => commandOf(id).includes(server)).length;
}

function commandOf(id: string): readonly string[] {
  try {
    return readFileSync(join('/proc', id, 'cmdline'), 'utf8').split('\0');
  } catch {
    return []; // It has just ended.
  }
}

async function untilNoneRuns(): Promise<void> {
  for (let tries = 0; serversRunning() > 0 && tries < 100; tries += 1) await pause(100);
}

describe('a window that is loaded anew', () => {
  it('ten times leaves one server running, which goes on finding, and none once it is closed (I01)', async function () {
    this.timeout(300_000);
    const editor = await openEditor();
    try {
      for (let time = 0; time < 10; time += 1) {
        await editor.openFile('sandmartin.craft');
        await editor.statusBar(/to mend/);
        await editor.load();
      }
      await editor.openFile('sandmartin.craft');
      await editor.statusBar(/to mend/);
      await editor.waitUntil('the servers of before to end', async () => serversRunning() === 1);
      await editor.press('Control+End');
      await editor.type('\n[arming]\ntilt-limt = 60 deg\n');
      await editor.waitForSquiggles('error');
    } finally {
      await editor.close();
    }
    await untilNoneRuns();
    assert.equal(serversRunning(), 0);
  });
});
