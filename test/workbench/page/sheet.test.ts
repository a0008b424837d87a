import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

interface Row {
  readonly id: string;
  readonly values: readonly string[];
}

/** As the sheet rounds: three digits, four from a thousand on. */
function rounded(value: number): number {
  return Number(value.toPrecision(Math.abs(value) >= 1000 ? 4 : 3));
}

describe('the build sheet', () => {
  const editor = oneWindow({ goesOn: true });
  const complaints: string[] = [];

  before(async () => {
    editor().page.on('console', (message) => {
      if (/content security policy|refused to (load|apply|execute)/i.test(message.text()))
        complaints.push(message.text());
    });
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    await editor().webview().locator('h1').waitFor();
  });

  it('tells of which craft it is, and its parts', async () => {
    const page = editor().webview();
    assert.equal(await page.locator('h1').innerText(), 'Sandmartin');
    // While what the craft includes is still being read there is less to tell.
    await page.locator('details.part h2').nth(2).waitFor();
  });

  it('leads from a value to its line', async () => {
    const link = editor().webview().locator('button.value, button.link').first();
    const label = (await link.getAttribute('aria-label')) ?? '';
    const [, line = ''] = /line (\d+)/.exec(label) ?? [];
    assert.ok(Number(line) > 0, label);
    await link.click();
    await editor().statusBar(new RegExp(`Ln ${line},`));
  });

  it('changes the pack in view, here and in the status bar', async () => {
    const packs = editor().webview().locator('.packs button');
    const other = packs.filter({ hasText: 'cruise' });
    await other.click();
    await editor().waitUntil(
      'the other pack to be pressed',
      async () => (await other.getAttribute('aria-pressed')) === 'true',
    );
    assert.match(await editor().statusBar(/cruise/), /cruise/);
  });

  it('stays folded as it was left when it is hidden and shown, and when the window is loaded anew (J01)', async () => {
    const first = () => editor().webview().locator('details.part').first();
    const isOpen = async () => (await first().getAttribute('open')) !== null;
    assert.equal(await isOpen(), true);
    await first().locator('summary').first().click();
    await editor().waitUntil('the part to be folded', async () => !(await isOpen()));
    await editor().runCommand('View: Show Explorer');
    await editor().runCommand('Propsoff: Show Build Sheet');
    await editor().webview().locator('h1').waitFor();
    await editor().waitUntil('the part to be folded again', async () => !(await isOpen()));
    await editor().load();
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    await editor().webview().locator('h1').waitFor();
    await editor().waitUntil('the part to be folded again', async () => !(await isOpen()));
    await first().locator('summary').first().click();
    await editor().waitUntil('the part to be open', isOpen);
  });

  it('is reached and worked with keys alone, and shows where they are (J07)', async () => {
    const page = editor().webview();
    await page.locator('summary').first().focus();
    await editor().press('Tab');
    const focus = await page.locator(':focus').evaluate((one) => {
      const { outlineStyle, outlineWidth } = one.ownerDocument.defaultView?.getComputedStyle(one) ?? {};
      return { name: one.tagName, outlineStyle, width: Number.parseFloat(outlineWidth ?? '0') };
    });
    assert.ok(['BUTTON', 'SUMMARY'].includes(focus.name), focus.name);
    assert.notEqual(focus.outlineStyle, 'none');
    assert.ok(focus.width >= 1);
    const unnamed = await page
      .locator('button')
      .evaluateAll(
        (buttons) =>
          buttons.filter((one) => (one.getAttribute('aria-label') ?? one.textContent ?? '').trim() === '')
            .length,
      );
    assert.equal(unnamed, 0);
  });

  it('says on demand how a figure comes about', async () => {
    const title = editor().webview().locator('button.title').first();
    await title.click();
    assert.equal(await title.getAttribute('aria-expanded'), 'true');
    const reason = editor().webview().locator('tr.why:visible').first();
    assert.match(await reason.innerText(), /ms|Hz|Assumed/);
    await title.click();
    assert.equal(await editor().webview().locator('tr.why:visible').count(), 0);
  });

  it('lights up what the cursor’s line has to do with', async () => {
    await editor().goTo(editor().lineOf('sandmartin.craft', /^cutoff/));
    const lit = editor().webview().locator('tr.lit');
    await lit.filter({ hasText: 'Delay of the gyro’s filters' }).waitFor();
    await editor().goTo(editor().lineOf('sandmartin.craft', /^yaw.curve/));
    await lit.filter({ hasText: 'Rate at full stick: yaw' }).waitFor();
    assert.equal(await lit.filter({ hasText: 'Delay of the gyro’s filters' }).count(), 0);
    const flight = editor().webview().locator('.flights li.lit');
    assert.equal(await flight.count(), 0);
    await editor().goTo(editor().lineOf('sandmartin.craft', /^note /));
    await flight.waitFor();
    assert.equal(await lit.count(), 0);
    await editor().goTo(editor().lineOf('sandmartin.craft', /^cutoff/));
    await lit.filter({ hasText: 'Delay of the gyro’s filters' }).waitFor();
    assert.equal(await flight.count(), 0);
  });

  it('draws anew what an edit changes, and leaves the rest as it is, with its scroll and the keys', async () => {
    const page = editor().webview();
    const delay = page.locator('tr[data-figure=gyro-filter-delay]');
    const before = await delay.locator('.value').first().innerText();
    const unmoved = [
      '#my-hands',
      '#how-late',
      'tr[data-figure=motor-lag]',
      '#how-late > .inside > .scroller',
    ];
    for (const one of unmoved)
      await page
        .locator(one)
        .first()
        .evaluate((element) => element.setAttribute('data-kept', ''));
    const table = page.locator('#how-late > .inside > .scroller').first();
    await table.evaluate((element) => {
      element.style.width = '120px';
      element.scrollLeft = 40;
    });
    await delay.locator('button.title').focus();
    const path = join(editor().folder, 'sandmartin.craft');
    const text = readFileSync(path, 'utf8');
    // As another program does: the keys stay in the page.
    writeFileSync(path, text.replace(/^(cutoff += )2\.5 /m, '$12.4 '));
    await editor().waitUntil(
      'the delay to change',
      async () => (await delay.locator('.value').first().innerText()) !== before,
    );
    assert.equal(await page.locator('[data-kept]').count(), unmoved.length);
    assert.equal(await table.evaluate((element) => element.scrollLeft), 40);
    assert.equal(await page.locator(':focus').innerText(), 'Delay of the gyro’s filters');
    writeFileSync(path, text);
    await table.evaluate((element) => {
      element.style.width = '';
    });
    await editor().waitUntil(
      'the delay to be as it was',
      async () => (await delay.locator('.value').first().innerText()) === before,
    );
  });

  it('reads a drawing by the arrow keys and by the pointer', async () => {
    const plot = editor().webview().locator('[role=slider]').first();
    await plot.focus();
    await editor().press('End');
    assert.match(
      (await plot.getAttribute('aria-valuetext')) ?? '',
      /^Stick 100 %: roll and pitch 650 deg\/s/,
    );
    await editor().press('Escape');
    await plot.hover({ position: { x: 60, y: 40 } });
    assert.match((await plot.getAttribute('aria-valuetext')) ?? '', /^Stick \d/);
  });

  for (const theme of everyTheme) {
    it(`keeps nobody out: axe finds nothing serious in the ${theme} theme (J06, J07)`, async () => {
      assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    });
  }

  for (const craft of ['sandmartin', 'bittern', 'wagtail']) {
    it(`shows of ${craft} the figures that the command line gives`, async () => {
      await editor().openFile(`${craft}.craft`);
      await editor()
        .webview()
        .locator('h1', { hasText: new RegExp(craft, 'i') })
        .waitFor();
      const given = JSON.parse(
        execFileSync(
          'node',
          ['dist/propsoff.js', 'sheet', join(editor().folder, `${craft}.craft`), '--json'],
          {
            encoding: 'utf8',
          },
        ),
      );
      const rows: readonly Row[] = await editor()
        .webview()
        .locator('tr[data-figure]')
        .evaluateAll((all) =>
          all.map((row) => ({
            id: row.getAttribute('data-figure') ?? '',
            values: [...row.querySelectorAll('.value, td > span')].map((cell) => cell.textContent ?? ''),
          })),
        );
      assert.ok(rows.length > 40, String(rows.length));
      for (const { id, values } of rows) {
        for (const [index, pack] of given.figures.entries()) {
          const figure = pack.figures.find((one: { readonly id: string }) => one.id === id);
          const shown = values.length === 1 ? values[0] : values[index];
          if (figure === undefined || shown === undefined) continue;
          assert.equal(Number.parseFloat(shown), rounded(figure.likely), `${id} of ${craft}`);
        }
      }
    });
  }

  it('fits a panel of 250 pixels: no word leaves its box, no column the panel', async () => {
    const bar = await editor().page.locator('.part.sidebar').boundingBox();
    assert.ok(bar !== null);
    await editor().openFile('bittern.craft');
    const drag = async (from: number, to: number) => {
      await editor().page.mouse.move(bar.x + from, 400);
      await editor().page.mouse.down();
      await editor().page.mouse.move(bar.x + to, 400, { steps: 4 });
      await editor().page.mouse.up();
    };
    await drag(bar.width, 250);
    const out = () =>
      editor()
        .webview()
        .locator('main')
        .evaluate((main) => {
          const right = main.getBoundingClientRect().right;
          return [
            ...[...main.querySelectorAll('.scroller')].filter(
              (one) => one.checkVisibility() && one.scrollWidth > one.clientWidth,
            ),
            ...[...main.querySelectorAll('.box + .named, #wired-where .tick')].filter((one) => {
              const words = one.getBoundingClientRect();
              const isNamed = one.classList.contains('named');
              const box = isNamed ? one.previousElementSibling?.getBoundingClientRect() : undefined;
              return words.right > (box?.right ?? right) || words.left < (box?.left ?? 0);
            }),
          ].map((one) => one.textContent ?? '');
        });
    await editor().waitUntil('a narrow sheet', async () => (await out()).length === 0);
    assert.ok((await editor().webview().locator('.stacked .box + .named').count()) >= 5);
    await drag(250, bar.width);
  });

  it('leads to the channels of everybody who flies, and to a wind', async () => {
    const page = editor().webview();
    await page.locator('#who-sees-me button', { hasText: 'Find Video Channels' }).click();
    await editor().page.locator('.quick-input-widget input[placeholder^="How many fly together"]').waitFor();
    await editor().press('Escape');
    await page.locator('button[data-variant="craft.wind"]').click();
    const far = page.locator('tr[data-moved=reach]');
    assert.match(await far.innerText(), /How far out against the wind/);
    await page.locator('button', { hasText: 'Leave It' }).click();
  });

  it('raises no complaint about its content (J03)', () => assert.deepEqual(complaints, []));

  it('stands beside a status bar that counts', async () => {
    assert.match(await editor().statusBar(/to mend/), /^0 to mend, 0 risks$/);
  });

  it('leaves a part to those who include it, and the status bar says that it is one', async () => {
    const title = () => editor().webview().locator('h1').innerText();
    const before = await title();
    await editor().openFile('club-habits.craft');
    assert.equal(await editor().statusBar(/read as a part/), '0 to mend, 0 risks, read as a part');
    assert.equal(await title(), before);
  });
});

describe('the build sheet of little', () => {
  const editor = oneWindow({ files: { 'part.craft': '[gyro]\nrate = 4 kHz\n', 'blank.craft': '# soon\n' } });

  it('says of a part alone, and of an empty script, how little was looked at', async () => {
    await editor().openFile('part.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    const part = editor().webview().locator('details.part');
    await part.getByText('Read as a part: what a whole craft needs was not checked.').waitFor();
    assert.match(await part.first().innerText(), /nothing found to mend in this part/);
    await editor().openFile('blank.craft');
    assert.equal(await editor().statusBar(/written/), 'Nothing written yet');
  });
});

describe('the build sheet of a board’s own settings', () => {
  const editor = oneWindow({ files: { 'own.craft': '[craft]\nname = "Own"\n[own]\nsiren = 80\n' } });

  it('follows the record of the last hand-over, whoever writes it', async () => {
    await editor().openFile('own.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    const header = editor().webview().locator('header');
    const told = (words: string) => header.getByText(words).waitFor();
    await told("1 setting of the board's own");
    const record = join(editor().folder, 'own.craft.handed.json');
    const handed = (value: string) =>
      writeFileSync(
        record,
        JSON.stringify({
          version: 1,
          board: 'wren',
          pack: null,
          reason: null,
          settings: [{ groups: [], name: 'siren', value }],
        }),
      );
    handed('80');
    await told('none changed since the last hand-over');
    handed('60');
    await told('1 changed since the last hand-over');
    rmSync(record);
    await header.getByText('since the last hand-over').waitFor({ state: 'hidden' });
  });
});

describe('a build sheet that is moved', () => {
  const editor = oneWindow();

  it('shows the same in another place, folded as it was (J01)', async () => {
    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    const first = () => editor().webview().locator('details.part').first();
    const isFolded = async () => (await first().getAttribute('open')) === null;
    await first().locator('summary').first().click();
    await editor().waitUntil('the part to be folded', isFolded);
    await editor().runCommand('View: Move View');
    const row = (label: string) =>
      editor().page.locator('.quick-input-list .monaco-list-row', { hasText: label });
    await editor().page.keyboard.type('Build Sheet');
    await row('Build Sheet').first().click();
    await row('New Panel Entry').first().click();
    await editor()
      .page.locator('.part.panel .composite-bar', { hasText: /build sheet/i })
      .waitFor();
    await editor().webview().locator('h1', { hasText: 'Sandmartin' }).waitFor();
    assert.equal(await isFolded(), true);
    assert.ok((await editor().webview().locator('details.part').count()) >= 7);
    // Both are remembered, and the next test finds them as they were.
    await first().locator('summary').first().click();
    await editor().waitUntil('the part to be open', async () => !(await isFolded()));
    await editor().runCommand('View: Reset View Locations');
    await editor()
      .page.locator('.part.panel .composite-bar', { hasText: /build sheet/i })
      .waitFor({ state: 'hidden' });
  });
});
