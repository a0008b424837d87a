import { strict as assert } from 'node:assert';
import { servePage } from '../../workbench/serve-page.mjs';
import {
  at,
  desk,
  downloaded,
  frame,
  fromDisk,
  line,
  menu,
  onePage,
  openFile,
  phone,
  pick,
  script,
  sheet,
  sizes,
  textOf,
  until,
  write,
} from './driver';

/** What a frame would print is noted in place of a printer. */
const notedPrint = `window.print = () => { window.top.printed = document.title + document.body.textContent; }`;

describe('the page without an install', () => {
  const { open } = onePage();

  let host: Awaited<ReturnType<typeof servePage>>;
  before(async () => {
    host = await servePage();
  });
  after(() => host?.close());

  const places = [
    { from: 'a disk', address: () => fromDisk },
    { from: 'a static host', address: () => host.address },
  ];
  for (const { from, address } of places)
    for (const { on, options } of sizes)
      it(`leads from a typed craft to a saved file, from ${from} on ${on}`, async () => {
        const page = await open(options, {
          address: address(),
          prepare: (context) => context.addInitScript({ content: notedPrint }),
        });
        await write(
          page,
          '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n\n[gyro.filter.1]\ncutoff = 180 Hz\n',
        );
        await at(page, 'Findings');
        const finding = page
          .locator('#findings .finding')
          .filter({ hasText: 'Did you mean arming.tilt-limit?' });
        assert.match(await finding.innerText(), /Line 5/);
        await finding.getByRole('button', { name: /tilt-limit/ }).click();
        await finding.waitFor({ state: 'detached' });
        await at(page, 'Script');
        await line(page, 'tilt-limit = 60 deg').waitFor();

        if (options === desk) {
          await line(page, 'cutoff').hover({ position: { x: 20, y: 8 } });
          await page.locator('.cm-tooltip-hover').getByText('Cutoff of a gyro filter').first().waitFor();
        } else {
          await line(page, 'cutoff').tap();
          await menu(page, 'Explain This Line');
          await page.locator('.read-only').getByText('Cutoff of a gyro filter').first().waitFor();
        }

        await at(page, 'Build sheet');
        await page.getByRole('tab', { name: 'Build Sheet' }).click();
        await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();

        await menu(page, 'Open Bench Card');
        const card = frame(page, 'Bench Card');
        await card.getByLabel('Propellers off', { exact: true }).check();
        await card.getByText(/^1 of \d+ steps done/).waitFor();
        await menu(page, 'Print the Bench Card');
        await until(page, async () => /Linnet.*✓/s.test(String(await page.evaluate('window.printed'))));

        await page.locator('#save').click();
        const text = await textOf(await downloaded(page, () => pick(page, 'Save first.craft')));
        assert.match(text, /tilt-limit = 60 deg/);
        await openFile(page, 'again.craft', text.replace('Linnet', 'Siskin'));
        await line(page, '"Siskin"').waitFor();
        assert.equal(await page.locator('#script-name').innerText(), 'again.craft');
      });

  it('is left by keys alone as any page is: no key is caught in the script', async () => {
    const page = await open(desk);
    await page.locator('#editor .cm-content').focus();
    await page.keyboard.press('Tab');
    assert.equal(await page.evaluate("document.activeElement?.closest('#editor') === null"), true);
    assert.match(await script(page), /^# My first craft/, 'nothing is written');
  });

  it('leaves room for the script on a phone on its side, and all ways on in reach of a tap that explains', async () => {
    const page = await open({ ...phone, viewport: { width: 740, height: 360 } });
    const tall = (await page.locator('#editor').boundingBox())?.height ?? 0;
    assert.ok(tall > 0.7 * 360, `the script has ${tall} px of 360`);
    await line(page, 'mass ').tap({ position: { x: 12, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('craft.mass').first().waitFor();
    for (const place of ['Findings', 'Build sheet', 'Script']) await at(page, place);
    await page.setViewportSize({ width: 180, height: 370 });
    for (const place of ['Findings', 'Build sheet', 'Script']) await at(page, place);
    assert.equal(await page.evaluate('document.documentElement.scrollWidth'), 180, 'letters twice as large');
  });

  it('offers nothing that needs a wide screen on a phone, nor what no page can have', async () => {
    const page = await open(phone);
    await at(page, 'Build sheet');
    await sheet(page).getByRole('heading', { name: 'First' }).waitFor();
    await openFile(page, 'flight.csv', 'time,gyro\n0,1\n');
    await page.locator('.toast').getByText('open it on a wider screen').waitFor();
    await page.locator('#more').click();
    assert.equal(
      await page
        .locator('dialog')
        .getByText(/Recording/)
        .count(),
      0,
    );
    await pick(page, 'Compare');
    await page.locator('dialog').getByText('Another script').first().waitFor();
    assert.equal(
      await page
        .locator('dialog')
        .getByText(/earlier/i)
        .count(),
      0,
    );
    await page.keyboard.press('Escape');
  });

  it('finds values on a phone as well, and nothing of them is wider than it', async () => {
    const page = await open(phone);
    await at(page, 'Build sheet');
    await sheet(page).getByRole('button', { name: 'Find a Value' }).tap();
    const found = frame(page, 'Find a Value');
    for (const hold of ['phaseMargin', 'gainMargin']) await found.locator(`#hold-${hold}`).fill('any');
    await found.getByRole('button', { name: 'Find', exact: true }).tap();
    await found.locator('.trade svg .proposed').first().scrollIntoViewIfNeeded();
    const isTooWide = () => found.locator('html').evaluate((html) => html.scrollWidth > html.clientWidth);
    assert.equal(await isTooWide(), false);
  });

  it('shows behind a value what it comes to, which is no part of the text and follows it', async () => {
    const page = await open(desk);
    const text = 'let quiet = 90 Hz\n\n[gyro.filter.1]\ncutoff = 2 * quiet\n';
    await write(page, text);
    const hint = line(page, 'cutoff').locator('.hint');
    await until(page, async () => /180 Hz/.test((await hint.first().getAttribute('data-words')) ?? ''));
    await write(page, text.replace('90', '100'));
    await until(page, async () => /200 Hz/.test((await hint.first().getAttribute('data-words')) ?? ''));
    assert.doesNotMatch(await script(page), /200/);
  });

  it('starts the checks again when it is asked to, with all that is open', async () => {
    const page = await open(desk);
    await menu(page, 'Start the Checks Again');
    await write(page, '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n');
    await page.locator('#findings').getByText('Did you mean arming.tilt-limit?').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });
});
