import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

describe('a comparison', () => {
  const editor = oneWindow();
  const page = (): FrameLocator =>
    editor()
      .page.locator('.editor-instance iframe.webview.ready, iframe.webview.ready')
      .last()
      .contentFrame()
      .frameLocator('#active-frame');

  async function compareWith(what: string): Promise<void> {
    await editor().runCommand('Propsoff: Compare Two Scripts');
    await editor().page.locator('.quick-input-widget input').waitFor();
    await editor().page.keyboard.type(what);
    await editor().page.locator('.quick-input-list .monaco-list-row', { hasText: what }).first().click();
    await page().locator('h1').waitFor();
  }

  it('of two scripts tells what each difference does, and follows them', async () => {
    const folder = editor().folder;
    const text = readFileSync(join(folder, 'sandmartin.craft'), 'utf8');
    writeFileSync(join(folder, 'tired.craft'), text.replace('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet'));
    await editor().openFile('tired.craft');
    await editor().statusBar(/to mend/);
    await compareWith('sandmartin.craft');
    const setting = page().locator('.setting', { hasText: 'gyro.filter.1.cutoff' });
    assert.match(await setting.locator('.values').innerText(), /225 Hz → 135 Hz/);
    const delay = page().locator('tr[data-figure=gyro-filter-delay]');
    assert.match(await delay.innerText(), /1\.2\d? ms.*1\.9\d? ms.*worse/s);
    writeFileSync(join(folder, 'tired.craft'), text);
    await page().locator('p', { hasText: 'No setting differs.' }).waitFor();
  });

  it('of two packs of a craft, and of a craft in the cold, shows both side by side, and leads to a line', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await compareWith('Pack cruise');
    const cells = page().locator('.setting:not(.alone)', { hasText: 'pack.<pack in view>.cells' });
    assert.match(await cells.locator('.values').innerText(), /6 → 4/);
    for (const part of ['Other figures that move', 'What each change does alone'])
      await page().locator('summary', { hasText: part }).click();
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    await cells.locator('button.value').last().click();
    await editor().statusBar(/Ln 5\d, /);
    await editor().page.locator('.tab', { hasText: 'Compare' }).locator('.codicon-close').click();
    await compareWith('in the cold');
    const minutes = page().locator('tr[data-figure=minutes-to-landing]');
    assert.match(await minutes.innerText(), /\d min.*\d min.*worse/s);
  });
});

/** Puts the demo under version control: the racer with a lower cut first, then as it is. */
function keepVersions(folder: string): void {
  const git = (...args: readonly string[]) => {
    const who = [
      '-c',
      'user.name=A Pilot',
      '-c',
      'user.email=pilot@club.example',
      '-c',
      'commit.gpgsign=false',
    ];
    execFileSync('git', [...who, ...args], { cwd: folder });
  };
  const path = join(folder, 'sandmartin.craft');
  const text = readFileSync(path, 'utf8');
  git('init', '--quiet');
  writeFileSync(path, text.replace('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet'));
  git('add', '.');
  git('commit', '--quiet', '--message', 'Fly it tired');
  writeFileSync(path, text);
  git('commit', '--quiet', '--all', '--message', 'Fly it fresh');
}

describe('a comparison with an earlier revision', () => {
  const editor = oneWindow();

  it('tells what was changed since, and follows the script', async () => {
    keepVersions(editor().folder);
    const rows = editor().page.locator('.quick-input-list .monaco-list-row');
    const values = editor()
      .webview()
      .locator('.setting', { hasText: 'gyro.filter.1.cutoff' })
      .locator('.values');
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await editor().runCommand('Propsoff: Compare Two Scripts');
    await rows.filter({ hasText: 'An earlier revision' }).click();
    await rows.filter({ hasText: 'Fly it fresh' }).waitFor();
    await rows.filter({ hasText: 'Fly it tired' }).click();
    await values.waitFor();
    assert.match(await values.innerText(), /135 Hz → 225 Hz/);
    const path = join(editor().folder, 'sandmartin.craft');
    writeFileSync(path, readFileSync(path, 'utf8').replace('cutoff = 2.5 * quiet', 'cutoff = 2 * quiet'));
    await values.filter({ hasText: '135 Hz → 180 Hz' }).waitFor();
  });
});
