import { strict as assert } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

describe('a value on trial', () => {
  const editor = oneWindow();
  const page = () => editor().webview();
  const path = () => join(editor().folder, 'sandmartin.craft');
  const trial = () => page().locator('#try section');
  const delay = () => trial().locator('tr[data-moved=gyro-filter-delay] td').first();

  async function tryCutoff(): Promise<void> {
    await editor().goTo(editor().lineOf('sandmartin.craft', /^cutoff/));
    await editor().runCommand('Propsoff: Try a Value');
    await trial().waitFor();
  }

  async function type(text: string): Promise<void> {
    await trial().locator('input.number').fill(text);
  }

  beforeEach(async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
  });

  /** What is on trial stays so when its script is closed. */
  afterEach(async () => {
    if (await trial().isVisible()) await trial().locator('button', { hasText: 'Leave It' }).click();
  });

  it('shows what moves, is written as one edit, and undone as one', async () => {
    await tryCutoff();
    assert.match(await trial().innerText(), /now 225 Hz/);
    await type('150 Hz');
    await delay().filter({ hasText: '→' }).waitFor();
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    assert.match(await delay().innerText(), /^1\.2\d? → \d\.\d+ ms$/);
    assert.match(readFileSync(path(), 'utf8'), /cutoff = 2\.5 \* quiet/);
    await trial().locator('button', { hasText: 'Write It' }).click();
    await trial().waitFor({ state: 'detached' });
    await editor().waitForText('cutoff = 150 Hz');
    await page()
      .locator('tr[data-figure=gyro-filter-delay] .value', { hasNotText: '1.19' })
      .first()
      .waitFor();
    await editor().focusEditor();
    await editor().press('Control+Z');
    await editor().waitForText('cutoff = 2.5 * quiet');
  });

  it('is moved by the slider with keys, and left with Escape', async () => {
    await tryCutoff();
    await trial().locator('input[type=range]').focus();
    for (let step = 0; step < 5; step += 1) await editor().press('ArrowLeft');
    await delay().waitFor();
    await editor().press('Escape');
    await trial().waitFor({ state: 'detached' });
    assert.match(readFileSync(path(), 'utf8'), /cutoff = 2\.5 \* quiet/);
  });

  it('shows with a press what winter costs, side by side, and writes nothing', async () => {
    await editor().runCommand('Propsoff: Show Build Sheet');
    const cold = page().locator('button[data-variant="craft.air-temperature"]');
    await cold.click();
    await trial().locator('tr[data-moved=minutes-to-landing]').waitFor();
    assert.equal(await trial().locator('input.number').inputValue(), '0 degC');
    const [first] = await trial().locator('tbody tr').all();
    assert.match((await first?.innerText()) ?? '', /Hovering time until landing.*worse/s);
    // What is asked first stands open, the rest folded below it.
    assert.equal(await trial().locator('tr[data-moved]:visible').count(), 10);
    const more = trial().locator('#try-more');
    const told = await more.locator('summary').innerText();
    assert.equal(told, `More that moves: ${await more.locator('tr[data-moved]').count()}`);
    const script = readFileSync(path(), 'utf8');
    assert.ok(!script.includes('air-temperature'));
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
  });

  it('says why a value can’t be written, as the script would', async () => {
    await tryCutoff();
    await type('3 ms');
    const refusal = trial().locator('.refusal');
    await refusal.waitFor();
    assert.match(await refusal.innerText(), /a frequency was expected/);
    assert.equal(await trial().locator('button', { hasText: 'Write It' }).isDisabled(), true);
  });

  it('is still there when the sheet was hidden, and follows what changes outside (J01, J05)', async () => {
    await tryCutoff();
    await type('150 Hz');
    await delay().waitFor();
    await editor().runCommand('View: Show Explorer');
    await editor().runCommand('Propsoff: Show Build Sheet');
    await delay().filter({ hasText: '→' }).waitFor();
    writeFileSync(path(), readFileSync(path(), 'utf8').replace('cutoff = 2.5 * quiet', 'cutoff = 2 * quiet'));
    await trial().locator('p', { hasText: 'now 180 Hz' }).waitFor();
    assert.match(readFileSync(path(), 'utf8'), /cutoff = 2 \* quiet/);
  });

  it('starts from a figure’s reason, and from above a section', async () => {
    await editor().runCommand('Propsoff: Show Build Sheet');
    const title = page().locator('button.title', { hasText: 'Delay of the gyro’s filters' });
    await title.click();
    await page().locator('.levers:visible button', { hasText: 'gyro.filter.1.cutoff' }).click();
    await trial().locator('p', { hasText: 'now 225 Hz' }).waitFor();
    await trial().locator('button', { hasText: 'Leave It' }).click();
    await editor().goTo(editor().lineOf('sandmartin.craft', /^\[gyro\.filter\.1\]/));
    await editor()
      .page.locator('.codelens-decoration a:visible', { hasText: 'Try a value' })
      .first()
      .waitFor();
  });
});
