import { strict as assert } from 'node:assert';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { oneWindow } from './one-window';

describe('a flight', () => {
  const editor = oneWindow({ goesOn: true });
  const box = () => editor().page.locator('.quick-input-widget:visible');
  const path = () => join(editor().folder, 'sandmartin.craft');

  before(async () => {
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend/);
  });

  /** Answers the questions by their titles; the others are passed on. */
  async function note(answers: Readonly<Record<string, string>>): Promise<void> {
    await editor().runCommand('Propsoff: Note a Flight');
    await box().locator('.monaco-list-row', { hasText: 'cruise' }).first().click();
    for (let question = 1; ; question += 1) {
      const title = box().locator('.quick-input-title', { hasText: `(${question} of` });
      await title.waitFor();
      const said = await box().innerText();
      const answer = Object.entries(answers).find(([words]) => said.includes(words))?.[1];
      if (answer !== undefined) await box().locator('input[type=text]').fill(answer);
      const [, of = ''] = /of (\d+)\)/.exec(await title.innerText()) ?? [];
      await editor().press('Enter');
      if (question === Number(of)) return;
    }
  }

  /** Starts noting and passes the first questions on. */
  async function passUpTo(wanted: number): Promise<void> {
    await editor().runCommand('Propsoff: Note a Flight');
    await box().locator('.monaco-list-row', { hasText: 'cruise' }).first().click();
    for (let question = 1; question < wanted; question += 1) {
      await box()
        .locator('.quick-input-title', { hasText: `(${question} of` })
        .waitFor();
      await editor().press('Enter');
    }
  }

  it('is noted by a few answers, shown in the sheet, and undone in one go', async () => {
    await note({ 'Warmest motor': '49', 'What the pilot': 'smooth', words: 'smooth' });
    await editor().waitForText('motor-temperature = 49 degC');
    await editor().runCommand('Propsoff: Show Build Sheet');
    const flights = editor().webview().locator('.flights li');
    await flights.filter({ hasText: 'cruise' }).first().waitFor();
    assert.equal(await flights.count(), 2);
    assert.match(await flights.first().innerText(), /cruise.*warmest motor 49 degC/s);
    await editor().waitUntil('the record', async () => existsSync(`${path()}.flown.json`));
    await editor().focusEditor();
    await editor().press('Control+Z');
    await editor().waitUntil('one flight', async () => (await flights.count()) === 1);
  });

  it('keeps its question in sight while an answer is wrong', async () => {
    await passUpTo(3);
    await box().locator('.quick-input-title', { hasText: '(3 of 8): Air temperature' }).waitFor();
    await box().locator('input[type=text]').fill('50 V');
    await box().getByText('a temperature was expected').waitFor();
    assert.match(await box().locator('.quick-input-title').innerText(), /Air temperature/);
    await editor().press('Escape');
  });

  it('is offered what changed since the last one', async () => {
    const line = editor().lineOf('sandmartin.craft', /^cutoff = 2 \* quiet/);
    await editor().goTo(line, 'cutoff = '.length + 1);
    await editor().press('Delete');
    await editor().type('1.5');
    const delay = editor().webview().locator('tr[data-figure=gyro-filter-delay]');
    await delay.filter({ hasNotText: '1.44 ms' }).waitFor();
    await passUpTo(8);
    await box().locator('.quick-input-title', { hasText: '(8 of 8)' }).waitFor();
    assert.match(
      await box().locator('input[type=text]').inputValue(),
      /gyro\.filter\.1\.cutoff 180 Hz → 135 Hz/,
    );
    await editor().press('Escape');
  });
});
