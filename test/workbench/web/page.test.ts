import { strict as assert } from 'node:assert';
import { appendFileSync, cpSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { simulatedFile } from '../../support/simulated-file';
import { scratchFolder } from '../launch.mjs';
import { EditorDriver, openProfile } from '../page/driver';
import { serveWebWorkbench } from './server.mjs';

const workspace = join(__dirname, '../../demo');
/** A slip, typed behind the last line of a script. */
const typed = '\n[arming]\ntilt-limt = 60 deg\n';

/** An editor that is a web page alone, with the demo in a file system that only it knows. */
async function openWebEditor(folder = workspace): Promise<EditorDriver> {
  const { origin, stop } = await serveWebWorkbench({ workspace: folder });
  const context = await openProfile();
  const page = await context.newPage();
  const driver = new EditorDriver({ address: () => origin, stop }, context, page, '', scratchFolder('web'));
  try {
    await driver.load();
  } catch (error) {
    await driver.close();
    throw error;
  }
  return driver;
}

/** This file system can't be searched, so a file is found by looking. */
async function openFromExplorer({ page }: EditorDriver, name: string): Promise<void> {
  await page.locator('.explorer-folders-view .monaco-list-row').filter({ hasText: name }).dblclick();
  await page.locator('.editor-group-container.active .tab.active').filter({ hasText: name }).waitFor();
  await page.locator('.editor-group-container.active .monaco-editor .view-lines').first().click();
}

describe('a pilot with nothing but a browser', () => {
  let editor: EditorDriver;
  before(async () => {
    editor = await openWebEditor();
  });
  after(() => editor.close());

  it('sees findings, in the text and counted, and what is meant', async () => {
    await openFromExplorer(editor, 'sandmartin.craft');
    await editor.press('Control+End');
    await editor.type(typed);
    await editor.waitForSquiggles('error');
    assert.match(await editor.statusBar(/to mend/), /\d+ to mend, \d+ risks?/);
    assert.match(await editor.hoverOver('tilt-limt'), /tilt-limit/);
  });

  it('is offered the names of the section', async () => {
    // Where the text ends, wherever that is: a key of before may have taken a proposal in place of a new line.
    await editor.press('Escape');
    await editor.press('Control+End');
    await editor.type('\n');
    const labels = await editor.suggestions();
    assert.ok(labels.includes('throttle-limit'), labels.join(' '));
    await editor.press('Escape');
  });

  it('has the build sheet beside the script', async () => {
    await editor.runCommand('Propsoff: Show Build Sheet');
    const sheet = editor.webview().locator('#sheet');
    await sheet.getByText('Can it fly').first().waitFor();
    assert.deepEqual(await editor.accessFaults(), []);
  });

  it('is offered the other scripts of a folder that can’t be searched, and told what has no revisions', async () => {
    await editor.focusEditor();
    await editor.runCommand('Propsoff: Compare Two Scripts');
    const rows = editor.page.locator('.quick-input-widget:visible .monaco-list-row');
    await rows.filter({ hasText: 'bittern.craft' }).first().waitFor();
    await rows.filter({ hasText: 'An earlier revision' }).first().click();
    await editor.waitUntil('the reason', async () =>
      (await editor.notifications()).some((text) =>
        /Earlier revisions can’t be read here|no earlier revision/.test(text),
      ),
    );
  });
});

describe('a recording in a browser', () => {
  it('leads from a finding to lines in the script, and to what they would change', async () => {
    const editor = await openWebEditor();
    try {
      await openFromExplorer(editor, 'sandmartin.craft');
      await editor.statusBar(/to mend/);
      await editor.press('Control+End');
      await editor.page.locator('.codelens-decoration a', { hasText: 'Open Recording' }).click();
      const page = editor.webview();
      await page.locator('[data-finding="shake/tone-let-through"] button.write').first().click();
      await page.locator('#written button', { hasText: 'See What It Changes' }).click();
      const row = page
        .locator('#compared-shake tr', { hasText: 'at 118 Hz, what the filters leave' })
        .first();
      assert.match(await row.innerText(), /better/);
      assert.deepEqual(await editor.accessFaults(), []);
      await editor.runCommand('View: Focus First Editor Group');
      await editor.press('Control+Home');
      await editor.press('Control+F');
      await editor.type('[gyro.filter.3]');
      await editor.waitForText('measured on 2026-05-14');
    } finally {
      await editor.close();
    }
  });

  it('is handed over by the editor and told, once its columns are confirmed', async () => {
    const folder = scratchFolder('web-flights');
    cpSync(workspace, folder, { recursive: true });
    writeFileSync(join(folder, 'dusk.csv'), simulatedFile({ tone: 180, layout: 'semicolons' }));
    const lines = '\n[flight.dusk]\ndate = 2026-06-12\npack = sprint\nrecording = "dusk.csv"\n';
    appendFileSync(join(folder, 'sandmartin.craft'), lines);
    const editor = await openWebEditor(folder);
    try {
      await openFromExplorer(editor, 'sandmartin.craft');
      await editor.statusBar(/to mend/);
      await editor.runCommand('Propsoff: Open Recording');
      await editor.page
        .locator('.quick-input-list .monaco-list-row', { hasText: 'dusk.csv' })
        .first()
        .click();
      const page = editor.webview();
      await page.locator('button', { hasText: 'Read It So, Once' }).first().click();
      await page.locator('#shake .axis').first().waitFor();
      assert.match(await page.locator('.about').innerText(), /told for sandmartin\.craft/);
      assert.match(await page.locator('[data-axis=roll] table').last().innerText(), /1(79|80|81)\.\d+ Hz/);
      assert.deepEqual(await editor.accessFaults(), []);
    } finally {
      await editor.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('a browser that keeps its clipboard to itself', () => {
  it('has the text for the board saved as a file, and says why', async () => {
    const editor = await openWebEditor();
    try {
      await editor.page.context().clearPermissions();
      await editor.page.evaluate(
        'navigator.clipboard.readText = () => Promise.reject(new Error("the browser refuses"))',
      );
      await openFromExplorer(editor, 'wagtail.craft');
      await editor.statusBar(/to mend/);
      await editor.runCommand('Propsoff: Copy Text for the Board');
      // The editor itself asks for leave first; a pilot who can't give it closes that.
      const refusal = editor.page.locator('.notification-list-item').filter({ hasText: 'Unable to read' });
      await refusal.hover();
      await refusal.locator('.codicon-notifications-clear').click();
      const dialog = editor.page.locator('.monaco-dialog-box');
      await dialog.getByText('does not let the clipboard be read back').waitFor();
      await dialog.getByRole('button', { name: 'Save as a File…' }).click();
      const box = editor.page.locator('.quick-input-widget:visible input[type=text]');
      await editor.waitUntil('a name for the file', async () =>
        /wagtail\.boardtext$/.test(await box.inputValue().catch(() => '')),
      );
    } finally {
      await editor.close();
    }
  });
});
