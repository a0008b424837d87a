import { strict as assert } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { listingText, namedIn, ownSettings } from '../../support/named-listings/named-listings';
import { everyTheme } from './driver';
import { MeaningsPage } from './meanings-page';
import { oneWindow } from './one-window';

/** `switch.<function>.on arm low` as the page shows it. */
function pathOf(means: string): string {
  const [parameter = '', ...rest] = means.split(' ');
  const isOpen = parameter.includes('<') && !parameter.startsWith('pack.');
  const path = isOpen ? parameter.replace(/<[a-z]+>/, rest[0] ?? '') : parameter;
  return [path, ...rest.slice(isOpen ? 1 : 0)].join(', ');
}

describe('saying what settings mean', () => {
  const editor = oneWindow({ width: 1500, height: 1000 });
  const page = () => editor().webview();
  const notified = (text: RegExp) =>
    editor().page.locator('.notification-toast', { hasText: text }).first().waitFor();
  const meanings = () => new MeaningsPage(editor());
  const said = (name: string) => meanings().said(name);
  const pressed = (name: string, press: () => Promise<void>) => meanings().pressed(name, press);

  it('takes at most sixty presses for 120 settings, and the board is then shown, written and proved', async () => {
    const text = `${listingText([...namedIn('english'), ...ownSettings()])}\n`;
    writeFileSync(join(editor().folder, 'dipper.boardtext'), text);
    await editor().openFile('dipper.boardtext');
    await editor().statusBar(/read as a part/);
    await editor().goTo(editor().lineOf('dipper.boardtext', /^roll P gain/));
    const offered = editor().page.locator('.action-widget .monaco-list-row.action.focused', {
      hasText: 'Say what this setting means',
    });
    // What comes in late about a text that was just opened closes the list.
    await editor().waitUntil('the setting to be asked about', async () => {
      await editor().press('Escape');
      await editor().press('Control+.');
      return offered.waitFor({ timeout: 3_000 }).then(
        () => true,
        () => false,
      );
    });
    await editor().press('Enter');
    await page().locator('.row:focus', { hasText: 'roll P gain' }).waitFor();
    assert.equal(said('dipper'), 0, 'nothing is taken that was not pressed');

    let presses = 2;
    await pressed('dipper', () => page().locator('#take-sure').click());
    await pressed('dipper', () => page().locator('[data-manner="plain units"]').click());
    // By keys from here on: a family, or a setting alone, with one press each.
    const next = page().locator(
      '.part-counting .ways button.way:not(.unknown), .part-likely .head .actions button, .part-likely .alone .actions .take, .part-likely .ways button.way',
    );
    while ((await next.count()) > 0) {
      presses += 1;
      await pressed('dipper', () => next.first().press('Enter'));
    }
    // Nearest guesses stand below; of these the pilot takes those that are right.
    presses += 1;
    await page().locator('.part-own .fold').click();
    for (const { group, name, means } of namedIn('english')) {
      if (said('dipper') >= 120) break;
      const row = page().locator(`.part-own .row[data-key="${group}/${name}"]`);
      const press = row.locator('.take, .way:not(.unknown)').first();
      if ((await press.count()) === 0) continue;
      const shown = await row.locator('code').first().innerText();
      if (shown !== pathOf(means ?? '')) continue;
      presses += 1;
      await pressed('dipper', () => press.press('Enter'));
    }
    assert.ok(said('dipper') >= 120 && presses <= 60, `${said('dipper')} said by ${presses} presses`);

    await editor().press('Control+Z');
    await page()
      .locator('.counts')
      .filter({ hasText: /^1[12]\d of / })
      .waitFor();
    assert.equal(await editor().page.locator('.tab', { hasText: '.json' }).count(), 0);

    await editor().runCommand('View: Close Editor');

    const script = 'include "dipper.boardtext"\n[craft]\nname = "Dipper"\n';
    writeFileSync(join(editor().folder, 'dipper.craft'), script);
    await editor().openFile('dipper.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    await page().locator('h1', { hasText: 'Dipper' }).waitFor();

    await editor().runCommand('Propsoff: Copy Text for the Board');
    const dialog = editor().page.locator('.monaco-dialog-box');
    await dialog.locator('a, button', { hasText: 'Hand Over Anyway' }).click();
    await editor().page.locator('.quick-input-widget input').waitFor();
    await editor().type('a bench test without motors');
    await editor().press('Enter');
    await notified(/settings for/);
    const written = await editor().page.evaluate<string>('navigator.clipboard.readText()');
    assert.equal(written, text);
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'clipboard' })
      .first()
      .click();
    await notified(/settings equal, 0 different/);
  });

  it('tells by a recorded flight what 1 is, and margins hang on what is said so', async () => {
    const { folder } = editor();
    const gains = { roll: [52, 76, 26], pitch: [56, 82, 28], yaw: [70, 76, 0] };
    const lines = Object.entries(gains).flatMap(([axis, [p, i, d]]) => [
      `${axis} P gain ~> ${p}`,
      `${axis} I gain ~> ${i}`,
      `${axis} D gain ~> ${d}`,
    ]);
    writeFileSync(join(folder, 'tern.boardtext'), `== loop ==\n${lines.join('\n')}\n`);
    const racer = readFileSync(join(folder, 'sandmartin.craft'), 'utf8');
    const bare = racer.replace(/^(?:proportional|integral|derivative) += .*\n/gm, '');
    const limits = 'control.integral-limit = 25 %\nderivative.limit = 30 %\n';
    writeFileSync(join(folder, 'sandmartin.craft'), `include "tern.boardtext"\n${limits}${bare}`);
    await editor().openFile('sandmartin.craft');
    await editor().statusBar(/to mend|to look at|checked/);
    await editor().openFile('tern.boardtext');
    await editor().runCommand('Propsoff: Say What Settings Mean');
    await page().locator('#measure').click();
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'before-the-rain' })
      .first()
      .click();
    const family = page().locator('.measured .family', { hasText: 'Proportional' });
    await family.waitFor();
    assert.match(
      await page().locator('.measured .told').innerText(),
      /^Right only if tern\.boardtext, which sandmartin\.craft includes, was on the board in flight before-the-rain of/,
    );
    assert.match(
      await family.innerText(),
      /52 on roll was 0\.0\d+ %\/\(deg\/s\) .*; so 1 is 0\.001 %\/\(deg\/s\)/,
    );
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    assert.equal(said('tern'), 0, 'nothing is taken that was not pressed');
    for (const term of ['proportional', 'integral', 'derivative'])
      await pressed('tern', () => page().locator(`[data-measured=${term}]`).click());
    assert.equal(await page().locator('[data-measured]').count(), 0, 'what was said is not offered again');
    const scale = (name: string) =>
      meanings()
        .profile('tern')
        .find((row) => row.name === name)?.counts?.scale;
    assert.deepEqual([scale('roll P gain'), scale('yaw P gain'), scale('pitch I gain')], [1000, 1000, 200]);

    await editor().openFile('sandmartin.craft');
    await editor().runCommand('Propsoff: Show Build Sheet');
    // Which of the two stands first hangs on what was in the window before.
    const onSheet = (index: number) =>
      editor()
        .webview(index)
        .locator('details.part', { hasText: /Phase margin/ })
        .first()
        .isVisible();
    await editor().waitUntil('margins', async () => (await onSheet(0)) || (await onSheet(1)));
  });

  it('shows what a value comes to, changes it in the row, and can be left and taken up again', async () => {
    const lines = [
      ...['== calm ==', 'first cut ~> 225', 'idle share ~> 65'],
      ...['== loop ==', 'roll P gain ~> 47', 'pitch P gain ~> 51', 'yaw P gain ~> 44'],
    ];
    writeFileSync(join(editor().folder, 'captured.txt'), lines.join('\n'));
    await editor().openFile('captured.txt');
    await meanings().open('captured.txt');
    const row = (name: string) => page().locator(`.row[data-key="${name}"]`);
    if (!(await row('calm/idle share').isVisible())) await page().locator('.part-own .fold').click();
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    await row('calm/idle share').focus();
    await editor().press('ArrowRight');
    await page().locator('.editor .wide input').fill('motor.idle');
    await editor().press('Tab');
    await page().locator('[name=scale]').fill('0.1');
    await editor().press('Tab');
    await page().locator('.preview', { hasText: '65 becomes 6.5 %, usual' }).waitFor();
    await pressed('captured', () => page().locator('.editor button.main').click());
    // One axis never stands apart from the others.
    await row('loop/roll P gain').focus();
    await editor().press('ArrowRight');
    await page().locator('[name=scale]').fill('0.01');
    await editor().press('Tab');
    await page().locator('.preview', { hasText: '47 becomes 0.47 %/(deg/s)' }).waitFor();
    await pressed('captured', () => page().locator('.editor button.main').click());
    assert.deepEqual(
      meanings()
        .profile('captured')
        .map(({ name, means, counts }) => [name, means ?? null, counts?.scale ?? null]),
      [
        ['first cut', null, null],
        ['idle share', 'motor.idle', 10],
        ['roll P gain', 'control.roll.proportional', 100],
        ['pitch P gain', 'control.pitch.proportional', 100],
        ['yaw P gain', 'control.yaw.proportional', 100],
      ],
    );
    await page().locator('#undo').click();
    await page()
      .locator('.counts')
      .filter({ hasText: /^1 of 5/ })
      .waitFor();
    // What the board has is said beside it, as far as it is known.
    await page().locator('section.board .fold').click();
    await page().getByLabel('Full scale').fill('2000 apples');
    await editor().press('Tab');
    await page().locator('.hardware .reason', { hasText: '"2000 apples" is not a quantity' }).waitFor();
    await page().getByLabel('Full scale').fill('2000 deg/s');
    await editor().press('Tab');
    await page().locator('.hardware .reason:empty').waitFor({ state: 'attached' });
    const path = join(editor().folder, 'boards', 'captured.json');
    assert.deepEqual(JSON.parse(readFileSync(path, 'utf8')).hardware, { gyro: { fullScale: '2000 deg/s' } });
    // What was typed of one port stays when another is added.
    const names = page().locator('.hardware .part').getByLabel('Name', { exact: true });
    await page().getByRole('button', { name: 'Add a port', exact: true }).click();
    await names.fill('radio');
    await names.press('Tab');
    await page().getByRole('button', { name: 'Add a port', exact: true }).click();
    await names.nth(1).waitFor();
    assert.equal(await names.first().inputValue(), 'radio');
    const frame = await editor().frame();
    assert.equal(await frame.evaluate('document.documentElement.scrollWidth > innerWidth'), false);
    await editor().runCommand('View: Close Editor');
    await editor().runCommand('Propsoff: Edit Board Profile');
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'captured' })
      .first()
      .click();
    await page().locator('.part-said .fold').click();
    await page().locator('.row.done', { hasText: 'motor.idle' }).waitFor();
    assert.equal(said('captured'), 1);
  });
});
