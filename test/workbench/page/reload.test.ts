import { strict as assert } from 'node:assert';
import { setTimeout as pause } from 'node:timers/promises';
import type { EditorDriver } from './driver';
import { closeWindow, oneWindow } from './one-window';
import { serversRunning } from './own-servers';

async function untilNoneRuns(editor: EditorDriver): Promise<void> {
  for (let tries = 0; serversRunning(editor).length > 0 && tries < 100; tries += 1) await pause(100);
}

describe('a window that is loaded anew', () => {
  const opened = oneWindow();

  it('several times leaves one server running, which goes on finding, and none once it is closed (I01)', async function () {
    this.timeout(300_000);
    const times = 4;
    const editor = opened();
    for (let time = 0; time < times; time += 1) {
      await editor.openFile('sandmartin.craft');
      await editor.statusBar(/to mend/);
      await editor.load();
    }
    await editor.openFile('sandmartin.craft');
    await editor.statusBar(/to mend/);
    await editor.waitUntil('the servers of before to end', async () => serversRunning(editor).length === 1);
    await editor.press('Control+End');
    await editor.type('\n[arming]\ntilt-limt = 60 deg\n');
    await editor.waitForSquiggles('error');
    await closeWindow();
    await untilNoneRuns(editor);
    assert.deepEqual(serversRunning(editor), []);
  });
});
