import { strict as assert } from 'node:assert';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

describe('the bench card', () => {
  const editor = oneWindow({ width: 1400, goesOn: true });
  const page = () => editor().webview();
  const keep = () => page().getByText('Keep the Readings').first();
  const field = (words: string) => page().getByLabel(words, { exact: true });

  before(async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
    await editor().runCommand('Propsoff: Open Bench Card');
    await page().locator('h1').waitFor();
  });

  it('tells the steps of this craft, propellers off first and on last', async () => {
    const titles = await page().locator('ol label').allInnerTexts();
    const steps = titles.filter((title) => !title.includes(':'));
    assert.equal(steps[0], 'Propellers off');
    assert.ok(steps.includes('Turning itself over'));
    assert.match(await page().locator('h1').innerText(), /Sandmartin/);
  });

  it('counts what is ticked, and keeps it and the readings when it is opened anew', async () => {
    await page().getByLabel('Propellers off', { exact: true }).check();
    await field('Warmest motor, sprint').fill('41');
    assert.match(await page().locator('#count').innerText(), /^1 of \d+ steps done$/);
    await editor().runCommand('View: Close Editor');
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Open Bench Card');
    await page().locator('h1').waitFor();
    assert.equal(await field('Warmest motor, sprint').inputValue(), '41');
    assert.equal(await page().getByLabel('Propellers off', { exact: true }).isChecked(), true);
  });

  it('has one card for all packs, with a row of figures and fields for each', async () => {
    const rows = page().locator('li', { hasText: 'The test hover' }).getByRole('group');
    assert.deepEqual(await rows.locator('> b').allInnerTexts(), ['sprint', 'cruise']);
    assert.equal(await page().getByText('The test hover', { exact: true }).count(), 1);
    assert.equal(await field('Throttle in the hover, cruise').count(), 1);
  });

  it('has room to sign each part, which is kept as readings are', async () => {
    const parts = await page().locator('section > ol').count();
    assert.equal(
      await page()
        .getByLabel(/^Done by, /)
        .count(),
      parts,
    );
    await field('Done by, Wire it').fill('Maren');
    await editor().runCommand('View: Close Editor');
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Open Bench Card');
    await page().locator('h1').waitFor();
    assert.equal(await field('Done by, Wire it').inputValue(), 'Maren');
  });

  it('has each field described by the place of its fault, and by nothing else', async () => {
    for (const words of ['Warmest motor, sprint', 'Done by, Wire it', 'Upper end']) {
      const described = (await field(words).getAttribute('aria-describedby')) ?? '';
      assert.equal(await page().locator(`[id="${described}"]`).count(), 1, described);
    }
  });

  it('says at its field what was expected, as soon as it is typed', async () => {
    await field('At the battery pads after five seconds').fill('12 V');
    await page().getByText('This is a voltage. A resistance is wanted, in ohm').waitFor();
    assert.equal(await field('At the battery pads after five seconds').getAttribute('aria-invalid'), 'true');
    await field('Warmest motor, sprint').fill('41 V');
    await page()
      .locator('.fault', { hasText: /a temperature was expected/ })
      .waitFor();
  });

  it('keeps nothing while a reading can’t be, and goes to its field', async () => {
    await keep().click();
    await page().locator('[id="no-short/1"]:focus').waitFor();
    assert.equal(await field('Warmest motor, sprint').getAttribute('aria-invalid'), 'true');
  });

  it('keeps readings in the script, as one edit', async () => {
    await field('Warmest motor, sprint').fill('41');
    await field('At the battery pads after five seconds').fill('12000');
    await keep().click();
    await editor().waitForText('motor-temperature = 41 degC');
    await editor().waitForText('at the battery pads after five seconds 12000 ohm');
    await editor().waitForText('"Not ticked: ');
    await page().getByText('The readings are in the script.').first().waitFor();
    await editor().focusEditor();
    await editor().press('Control+Z');
    await editor().waitUntil(
      'the section to be gone',
      async () => !(await editor().visibleText()).includes('41 degC'),
    );
    await keep().click();
    const said = 'All readings on the card were written into the script already.';
    await editor().page.getByText(said, { exact: true }).waitFor();
    await editor().page.getByRole('button', { name: 'Write Them Again' }).click();
    await editor().waitForText('motor-temperature = 41 degC');
    // What was written is led to.
    await editor().page.locator('.monaco-editor.focused').waitFor();
  });

  it('loses the tick of a step that the script made another one, and says so', async () => {
    await page().getByLabel('The test hover', { exact: true }).check();
    // Opened from the card, the script would stand in front of it.
    await editor().runCommand('View: Focus First Editor Group');
    await editor().press('Control+End');
    await editor().type('\n[craft @ sprint]\nmass = 260 g\n');
    await page().locator('#lost', { hasText: 'The test hover' }).waitFor();
    assert.equal(await page().getByLabel('The test hover', { exact: true }).isChecked(), false);
    assert.equal(await page().getByLabel('Propellers off', { exact: true }).isChecked(), true);
  });

  for (const theme of everyTheme) {
    it(`keeps nobody out: axe finds nothing serious in the ${theme} theme (J06, J07)`, async () => {
      assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    });
  }
});
