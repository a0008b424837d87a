import { strict as assert } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { oneWindow } from './one-window';

describe('the board’s own text', () => {
  const editor = oneWindow();
  const clipboard = () => editor().page.evaluate<string>('navigator.clipboard.readText()');
  const notified = (text: string) =>
    editor().page.locator('.notification-toast', { hasText: text }).first().waitFor();

  async function pick(what: string): Promise<void> {
    await editor().page.locator('.quick-input-widget input').waitFor();
    await editor().page.keyboard.type(what);
    await editor().page.locator('.quick-input-list .monaco-list-row', { hasText: what }).first().click();
  }

  it('goes to the clipboard, is recorded beside the script, and proves equal to it', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified('settings for Heron, pack sprint');
    const text = await clipboard();
    assert.match(text, /^heron listens\.\n/);
    assert.match(text, /\nheron has heard \d+ settings\.\n$/);
    const record = join(editor().folder, 'sandmartin.craft.handed.json');
    assert.equal(JSON.parse(readFileSync(record, 'utf8')).board, 'heron');
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await pick('From the clipboard');
    await notified('The board holds what the script says.');
  });

  it('is marked where a board holds another value, as long as the proof is in sight', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified('settings for Heron, pack sprint');
    const text = await clipboard();
    writeFileSync(join(editor().folder, 'capture.txt'), text.replace('"Sandmartin"', '"Whinchat"'));
    await editor().openFile('capture.txt');
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await pick('capture.txt');
    const proof = editor().page.locator('.tab', { hasText: 'proof of sandmartin.craft' });
    await proof.waitFor();
    await editor().openFile('capture.txt');
    await editor().waitForSquiggles('warning');
    await proof.locator('.codicon-close').click();
    await editor().waitForNoSquiggles('warning');
  });

  it('is held back by must-fix findings, and goes out with a reason only', async () => {
    const path = join(editor().folder, 'wagtail.craft');
    writeFileSync(path, readFileSync(path, 'utf8').replace(/poles( *)= \d+/, 'poles$1= 13'));
    await editor().openFile('wagtail.craft');
    await editor().waitForSquiggles('error');
    await editor().runCommand('Propsoff: Copy Text for the Board');
    const dialog = editor().page.locator('.monaco-dialog-box');
    await dialog.waitFor();
    assert.match(await dialog.innerText(), /must-fix finding holds it back/);
    await dialog.locator('a, button', { hasText: 'Hand Over Anyway' }).click();
    await editor().page.locator('.quick-input-widget input').waitFor();
    await editor().page.keyboard.type('a bench test without motors');
    await editor().press('Enter');
    // Wren takes forty lines at a time.
    for (let piece = 1; ; piece += 1) {
      const next = editor().page.locator('.monaco-dialog-box', { hasText: `Piece ${piece} of` });
      const done = editor().page.locator('.notification-toast', { hasText: 'settings for Wren' });
      await next.or(done).first().waitFor();
      if (await done.isVisible()) break;
      if (piece === 1)
        assert.match(await clipboard(), /In spite of 1 must-fix finding: a bench test without motors/);
      await next.locator('a, button', { hasText: 'Copy the Next Piece' }).click();
    }
    assert.match(await clipboard(), /~~ wren sheet ends, \d+ settings\n$/);
  });

  it('follows the script in a preview', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await editor().runCommand('Propsoff: Preview Text for the Board');
    await editor().page.locator('.view-line', { hasText: 'heron listens.' }).first().waitFor();
    const path = join(editor().folder, 'sandmartin.craft');
    writeFileSync(path, readFileSync(path, 'utf8').replace('"Sandmartin"', '"Whinchat"'));
    await editor().page.locator('.view-line', { hasText: 'craft name is "Whinchat"' }).first().waitFor();
  });
});
