import { strict as assert } from 'node:assert';
import type { EditorDriver } from './driver';
import { oneWindow } from './one-window';
import { serversRunning } from './own-servers';

/** Ends the server as often as it comes back; gives how often that was. */
async function endForGood(editor: EditorDriver): Promise<number> {
  for (let times = 0; ; times += 1) {
    const hasCome = async () =>
      serversRunning(editor).length > 0 || (await editor.isInStatusBar(/checks stopped/));
    await editor.waitUntil('the server to come back or be given up', hasCome);
    const [server] = serversRunning(editor);
    if (server === undefined) return times;
    process.kill(server, 'SIGKILL');
    await editor.waitUntil('the server to be gone', async () => !serversRunning(editor).includes(server));
  }
}

describe('the status bar, when the checks are not there', () => {
  const opened = oneWindow({ goesOn: true });
  let editor: EditorDriver;

  before(async () => {
    editor = opened();
    await editor.openFile('sandmartin.craft');
    await editor.statusBar(/to mend/);
    await editor.waitUntil(
      'servers of other windows to end',
      async () => serversRunning(editor).length === 1,
    );
  });

  it('says that they have stopped instead of what was counted, and a click starts them again', async () => {
    assert.equal(await endForGood(editor), 5);
    await editor.statusBar(/checks stopped/);
    assert.equal(await editor.isInStatusBar(/to mend/), false);
    await editor.clickStatusBar(/checks stopped/);
    await editor.statusBar(/to mend/);
    assert.equal(serversRunning(editor).length, 1);
    await editor.focusEditor();
    await editor.press('Control+End');
    await editor.type('\n[arming]\ntilt-limt = 60 deg\n');
    await editor.waitForSquiggles('error');
  });

  it('says that a change is still being checked while no word comes, and a click starts them again', async () => {
    const [server = 0] = serversRunning(editor);
    process.kill(server, 'SIGSTOP');
    await editor.press('Control+End');
    await editor.type('tilt-limit = 60 deg\n');
    await editor.statusBar(/checking/);
    assert.equal(await editor.isInStatusBar(/to mend/), false);
    await editor.clickStatusBar(/checking/);
    await editor.statusBar(/to mend/);
    await editor.waitUntil('the silent server to end', async () => !serversRunning(editor).includes(server));
    assert.equal(serversRunning(editor).length, 1);
  });
});
