import { strict as assert } from 'node:assert';
import { appendFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { simulatedFile } from '../../support/simulated-file';
import { type EditorDriver, everyTheme, openEditor } from './driver';

describe('a recording', () => {
  let opened: EditorDriver | undefined;
  const editor = (): EditorDriver => opened ?? assert.fail('no editor');
  const page = () => editor().webview();

  beforeEach(async () => {
    opened = await openEditor();
    const { folder } = editor();
    mkdirSync(join(folder, 'flights'), { recursive: true });
    writeFileSync(join(folder, 'flights', 'dusk.csv'), simulatedFile({ tone: 180 }));
    const lines = '\n[flight.dusk]\ndate = 2026-06-12\npack = sprint\nrecording = "flights/dusk.csv"\n';
    appendFileSync(join(folder, 'sandmartin.craft'), lines);
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
  });

  afterEach(async () => {
    await opened?.close();
  });

  it('has its columns confirmed once, and then tells what shakes for the script that names it', async () => {
    await editor().goTo(editor().lineOf('sandmartin.craft', /^recording/));
    await editor().page.locator('.codelens-decoration a', { hasText: 'Open Recording' }).click();
    await page().locator('fieldset.column').first().waitFor();
    for (const theme of everyTheme) {
      await editor().setTheme(theme);
      assert.deepEqual(await editor().accessFaults(), []);
    }
    await page().locator('button', { hasText: 'Confirm and Keep' }).click();
    await editor().page.locator('.quick-input-widget:visible input[type=text]').fill('tern');
    await editor().press('Enter');
    await page().locator('#shake').waitFor();
    assert.ok(existsSync(join(editor().folder, 'recordings', 'tern.json')));
    assert.match(await page().locator('.about').innerText(), /told for sandmartin\.craft/);
    for (const theme of everyTheme) {
      await editor().setTheme(theme);
      assert.deepEqual(await editor().accessFaults(), []);
    }
  });
});
