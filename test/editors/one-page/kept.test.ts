import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { textsIn } from '../../../client/one-page/bundle';
import { servePage } from '../../workbench/serve-page.mjs';
import {
  at,
  desk,
  downloaded,
  frame,
  kept,
  line,
  menu,
  onePage,
  openFile,
  phone,
  pick,
  ready,
  script,
  sheet,
  textOf,
  until,
  visit,
  write,
} from './driver';

/** Run in the page: a storage that takes nothing more, until there is room again. */
const fullStorage = `(() => {
  const { setItem } = Storage.prototype;
  window.makeRoom = () => { Storage.prototype.setItem = setItem; };
  Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };
})()`;

const forbiddenStorage = `Object.defineProperty(window, 'localStorage', {
  get() { throw new DOMException('not here', 'SecurityError'); },
})`;

describe('what the page without an install keeps', () => {
  const { open } = onePage();

  it('keeps scripts, includes and what was ticked, and saves and opens all of them as one bundle', async () => {
    const page = await open(desk);
    await openFile(page, 'shared.craft', '[motor]\r\nkv = 1850 rpm/V\r\n');
    await line(page, 'kv').click();
    await page.keyboard.press('End');
    await page.keyboard.insertText(' # measured');
    await openFile(page, 'linnet.craft', 'include "shared.craft"\n\n[craft]\nname = "Linnet"\n');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
    assert.equal(
      await page.locator('#findings').getByText('shared.craft').count(),
      0,
      'the include is found',
    );
    await page.locator('#save').click();
    const bundle = await downloaded(page, () => pick(page, 'Save propsoff.zip'));
    const bytes = readFileSync(await bundle.path());
    const texts = new Map(textsIn(bytes)?.texts);
    assert.equal(
      texts.get('shared.craft'),
      '[motor]\r\nkv = 1850 rpm/V # measured\r\n',
      'lines end as they did',
    );
    await page.reload();
    await ready(page);
    await line(page, 'include "shared.craft"').waitFor();

    await page.locator('#scripts').click();
    await pick(page, 'Delete');
    await page.locator('.toast').getByText('linnet.craft is deleted.').waitFor();
    await until(page, async () => !(await kept(page)).includes('Linnet'));
    await openFile(page, 'propsoff.zip', bytes);
    await line(page, 'name').first().waitFor();
    await page.locator('#scripts').click();
    await pick(page, 'linnet.craft');
    await line(page, 'include "shared.craft"').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('takes along what belongs to a script that is renamed, and leaves nothing of one that is deleted', async () => {
    const page = await open(phone);
    await menu(page, 'Open Bench Card');
    const card = () => page.frameLocator('iframe[title="Bench Card"] >> nth=-1');
    await card().getByLabel('Propellers off', { exact: true }).check();
    await card()
      .getByText(/^1 of \d+ steps done/)
      .waitFor();
    await openFile(page, 'linnet.craft', 'include "first.craft"\n\n[craft]\nname = "Linnet"\n');
    await page.locator('#scripts').click();
    await pick(page, 'first.craft');

    await page.locator('#scripts').click();
    await pick(page, 'Rename');
    const name = page.getByRole('textbox', { name: 'Rename' });
    await name.fill('../out.craft');
    await name.press('Enter');
    await page.locator('dialog .wrong').getByText('A name with its ending is wanted').waitFor();
    await name.fill(' wren 1.craft ');
    await name.press('Enter');
    await page.locator('#script-name').getByText('wren 1.craft', { exact: true }).waitFor();
    await until(page, async () => !(await kept(page)).includes('first.craft'));
    assert.match(await kept(page), /include \\+"wren 1\.craft\\+"/);
    await at(page, 'Build sheet');
    await card().getByText('There is no card').waitFor();
    await page.getByRole('tab', { name: 'Bench Card' }).press('Delete');
    await menu(page, 'Open Bench Card');
    await card()
      .getByText(/^1 of \d+ steps done/)
      .waitFor();

    await page.locator('#scripts').click();
    await pick(page, 'Delete');
    await page.locator('.toast').getByRole('button', { name: 'Bring It Back' }).click();
    await line(page, '"First"').waitFor();
    await until(page, async () => (await kept(page)).includes('propsoff.card'));
    for (const _ of ['wren 1.craft', 'linnet.craft']) {
      await page.locator('#scripts').click();
      await pick(page, 'Delete');
    }
    await page.locator('#script-name').getByText('No script').waitFor();
    await until(page, async () => !/file|card/.test(await kept(page)));
    await at(page, 'Build sheet');
    await card().getByText('There is no card').waitFor();
    await page.getByRole('tab', { name: 'Build Sheet' }).click();
    await sheet(page).getByText('No craft script is open').first().waitFor();
    await at(page, 'Findings');
    await page.locator('#findings').getByText('Nothing is open').waitFor();
  });

  it('never says of a text that it did not check that nothing is found in it', async () => {
    const page = await open(desk);
    await openFile(page, 'notes.txt', 'mas = 300 g\n');
    await page.locator('#findings').getByText('This text is not checked').waitFor();
    await openFile(page, 'LINNET.CRAFT.txt', '[craft]\nmas = 300 g\n');
    await page.locator('#findings').getByText('Did you mean craft.mass?').waitFor();
    assert.equal(await page.locator('#script-name').innerText(), 'LINNET.craft');
    await openFile(page, 'LINNET.craft', '[craft]\nmass = 301 g\n');
    await page.locator('dialog').getByText('There is another LINNET.craft').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.toast').getByText('Another LINNET.craft was not opened').waitFor();
    await openFile(page, 'picture.craft', Buffer.from([0x89, 0x50, 0x4e, 0x47]));
    await page.locator('.toast').getByText('picture.craft is no text in UTF-8').waitFor();
  });

  it('tells of a storage that is full, loses nothing, and keeps it once there is room', async () => {
    const page = await open(desk);
    await page.evaluate(fullStorage);
    await write(page, '[craft]\nname = "Linnet"\n');
    await page.locator('#trouble').getByText('storage is full').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
    await page.locator('#save').click();
    assert.match(await textOf(await downloaded(page, () => pick(page, 'Save first.craft'))), /Linnet/);
    await page.evaluate('makeRoom()');
    await write(page, '[craft]\nname = "Siskin"\n');
    await page.locator('#trouble').waitFor({ state: 'hidden' });
    await page.reload();
    await line(page, '"Siskin"').waitFor();
  });

  it('works in a browser that keeps nothing, and says so', async () => {
    const page = await open(phone, {
      prepare: (context) => context.addInitScript({ content: forbiddenStorage }),
    });
    await page.locator('#trouble').getByText('keeps nothing').waitFor();
    await write(page, '[craft]\nname = "Linnet"\n');
    await at(page, 'Build sheet');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('works without its host after the first visit', async () => {
    const other = await servePage();
    const page = await open(phone, { address: other.address });
    await write(page, '[craft]\nname = "Linnet"\n');
    await until(page, async () => (await kept(page)).includes('Linnet'));
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await other.close();
    await page.context().setOffline(true);
    await page.reload();
    await ready(page);
    assert.match(await script(page), /"Linnet"/);
    await at(page, 'Build sheet');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('has on a card in both of two tabs what was ticked and read off in each', async () => {
    const one = await open(desk);
    await menu(one, 'Open Bench Card');
    await card(one).getByRole('checkbox').nth(0).check();
    await card(one)
      .getByText(/^1 of /)
      .waitFor();
    await until(one, async () => (await kept(one)).includes('ticked'));

    const other = await visit(one.context());
    await menu(other, 'Open Bench Card');
    await card(other)
      .getByText(/^1 of /)
      .waitFor();
    await card(other).getByRole('checkbox').nth(1).check();
    await card(one)
      .getByText(/^2 of /)
      .waitFor();
    await card(one).getByRole('checkbox').nth(2).check();
    await card(other)
      .getByText(/^3 of /)
      .waitFor();
    await card(other).getByRole('checkbox').nth(0).uncheck();
    await card(other).getByRole('textbox').nth(1).fill('1.5');
    await card(one)
      .getByText(/^2 of /)
      .waitFor();
    await until(one, async () => (await card(one).getByRole('textbox').nth(1).inputValue()) === '1.5');
  });

  it('shows in each of two tabs what the other writes, and keeps both where one had slept', async () => {
    const one = await open(desk);
    const other = await visit(one.context());
    await write(one, '[craft]\nname = "Linnet"\n');
    await line(other, '"Linnet"').waitFor();
    await write(other, '[craft]\nname = "Siskin"\n');
    await line(one, '"Siskin"').waitFor();

    // A change that its own page hears nothing of, as a tab that sleeps hears nothing of the others.
    const theirs = JSON.stringify('[craft]\nname = "Wren"\n');
    await one.evaluate(`localStorage.setItem('propsoff/file/first.craft', ${theirs})`);
    await write(one, '[craft]\nname = "Robin"\n');
    await one.locator('.toast').getByText('is kept as first-2.craft').waitFor();
    await one.locator('#scripts').click();
    await pick(one, 'first-2.craft');
    await line(one, '"Wren"').waitFor();
  });
});

const card = (page: Page) => frame(page, 'Bench Card');
