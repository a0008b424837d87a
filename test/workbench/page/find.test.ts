import { strict as assert } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

describe('a value that is found', () => {
  const editor = oneWindow();
  const page = () => editor().webview();
  const proposal = (id: string) => page().locator(`section[data-proposal=${id}]`);

  beforeEach(async () => {
    await editor().openFile('wagtail.craft');
    await editor().statusBar(/to mend/);
  });

  it('is one of three proposals, written as one edit and undone as one', async () => {
    await editor().goTo(editor().lineOf('wagtail.craft', /^cutoff = 240 Hz/));
    await editor().runCommand('Propsoff: Find a Value');
    await page().locator('button', { hasText: 'Find' }).first().click();
    await proposal('middle').waitFor({ timeout: 60_000 });
    for (const id of ['least-delay', 'quietest']) assert.equal(await proposal(id).count(), 1);
    assert.match(
      await page().locator('#result .answer').innerText(),
      /holds from .* \(least delay\) to .* \(quietest\)/,
    );
    assert.match(await page().locator('#result').innerText(), /It needs filtering: without any filter/);
    assert.match(
      await page().locator('#result .measured').first().innerText(),
      /by the model of the motors’ tones alone, not by measured noise: no flight of the script names a recording\./,
    );
    assert.equal(await page().locator('.trade svg circle.proposed').count(), 3);
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    await proposal('middle').locator('button.main').click();
    await page().locator('#result', { hasText: 'stands in the script now' }).waitFor();
    const before = readFileSync(join(editor().folder, 'wagtail.craft'), 'utf8');
    assert.match(before, /cutoff = 240 Hz/);
    await editor().runCommand('View: Focus First Editor Group');
    await editor().focusEditor();
    await editor().press('Control+Z');
    await editor().waitForText('cutoff = 240 Hz');
  });

  it('is weighed by the noise of the last flight that names a recording', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Find a Value');
    await page().locator('button', { hasText: 'Find' }).first().click();
    await proposal('middle').waitFor({ timeout: 120_000 });
    assert.match(
      await page().locator('#result > .measured').innerText(),
      /^Weighed with the noise that before-the-rain\.csv \(simulated\) has .* above 200 Hz, half of the rate of its rows.* Margins are looked for with what before-the-rain\.csv shows of the craft/,
    );
    assert.match(
      await proposal('middle').locator('.measured').first().innerText(),
      /^Measured noise up to 200 Hz, rms behind the filters \(before them\): roll [\d.]+ → [\d.]+ \([\d.]+\) deg\/s; /,
    );
    assert.deepEqual(await editor().accessFaults(), []);
  });

  it('says of a craft without filters where it hums, and writes the lines to fill in', async () => {
    const text = readFileSync(join(editor().folder, 'wagtail.craft'), 'utf8');
    const bare = text.replace(/\[gyro\.filter\.1\][\s\S]*?(?=\[derivative)/, '');
    writeFileSync(join(editor().folder, 'bare.craft'), bare);
    await editor().openFile('bare.craft');
    await editor().runCommand('Propsoff: Find a Value');
    await page().locator('button', { hasText: 'Find' }).first().click();
    await page().locator('#result', { hasText: 'the motors hum with pack single at' }).waitFor();
    await page().locator('button', { hasText: 'Write this line' }).click();
    await editor().waitForText('filter.1.kind = #');
    assert.equal(await editor().page.locator('.tab', { hasText: 'Find a Value' }).count(), 1);
    await editor().runCommand('Propsoff: Find a Value');
    assert.equal(await editor().page.locator('.tab', { hasText: 'Find a Value' }).count(), 1);
  });

  it('is not looked for while what is asked can’t be read; what can’t be had says why', async () => {
    await editor().runCommand('Propsoff: Find a Value');
    await page().locator('#hold-toneLeft').fill('quiet');
    await page().locator('button', { hasText: 'Find' }).first().click();
    await page().locator('.refusal', { hasText: 'not "quiet"' }).waitFor();
    await page().locator('#hold-toneLeft').fill('110');
    await page().locator('button', { hasText: 'Find' }).first().click();
    await page().locator('h2', { hasText: 'What stands in the way' }).waitFor({ timeout: 60_000 });
    assert.equal(await page().locator('section[data-proposal]').count(), 0);
    assert.deepEqual(await editor().accessFaults(), []);
  });
});
