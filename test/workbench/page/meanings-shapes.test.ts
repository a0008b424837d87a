import { strict as assert } from 'node:assert';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyTheme } from './driver';
import { MeaningsPage } from './meanings-page';
import { oneWindow } from './one-window';

describe('saying what settings of other shapes mean', () => {
  const editor = oneWindow({ width: 1500, height: 1000 });
  const meanings = () => new MeaningsPage(editor());
  const page = () => editor().webview();
  const notified = (text: RegExp) =>
    editor().page.locator('.notification-toast', { hasText: text }).first().waitFor();

  async function captured(lines: readonly string[]): Promise<MeaningsPage> {
    writeFileSync(join(editor().folder, 'dipper.boardtext'), `${lines.join('\n')}\n`);
    await editor().openFile('dipper.boardtext');
    await editor().statusBar(/read as a part/);
    await editor().runCommand('Propsoff: Say What Settings Mean');
    await page().locator('.counts').waitFor();
    return meanings();
  }

  /** Hands the text over with more lines in a script that includes it, and proves it against what was handed over. */
  async function handedOver(more: string): Promise<string> {
    await editor().runCommand('View: Close Editor');
    writeFileSync(join(editor().folder, 'dipper.craft'), `include "dipper.boardtext"\n${more}`);
    await editor().openFile('dipper.craft');
    await editor().clearNotifications();
    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified(/settings for/);
    const written = await editor().page.evaluate<string>('navigator.clipboard.readText()');
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'clipboard' })
      .first()
      .click();
    await notified(/settings equal, 0 different/);
    return written;
  }

  it('says ports, steps, motors and packed flags, each with a press, then writes and proves them', async () => {
    const lines = [
      ...['[doors]', 'port 1 = 2', 'port 2 = 0', 'port 3 = 7', 'port 4 = 5'],
      ...[
        '[view]',
        'strength step = 2 (1..4)',
        '[row]',
        'motor 1 = 3',
        'motor 2 = 4',
        'motor 3 = 1',
        'motor 4 = 2',
      ],
      ...['[levers]', 'alpha from = 1700', 'alpha to = 2100', '[habits]', 'bell = 13', 'habits = 0x15'],
      'pace = 7',
    ];
    const on = await captured(lines);

    // One port is chosen, and the others go with it.
    await on.choose('doors/port 1');
    await page().getByLabel('2 is', { exact: true }).selectOption('receiver.port');
    await page().getByLabel('0 is', { exact: true }).selectOption('unused');
    await page().getByLabel('5 is', { exact: true }).selectOption('telemetry.port');
    await on.take('dipper');
    assert.equal(
      await on
        .row('doors/port 1')
        .innerText()
        .then((text) => /2 becomes Serial port of the receiver/.test(text)),
      true,
    );
    await on.row('doors/port 3').locator('.aside', { hasText: 'Nobody has said what 7 is' }).waitFor();

    await on.choose('view/strength step');
    await on.means('video.power');
    await page().locator('.editor .steps .fold').click();
    await page().getByLabel('1 is', { exact: true }).fill('25 mW');
    await page().getByLabel('2 is', { exact: true }).fill('100 mW');
    await editor().press('Tab');
    await on.previewed('2 becomes 100 mW');
    await on.take('dipper');

    await on.choose('row/motor 1');
    await on.means('motor.order');
    await page().locator('[name=part]').selectOption('entry');
    await page().locator('[name=entry]').fill('1');
    const places = ['front-left', 'front-right', 'rear-left', 'rear-right'];
    for (const [index, place] of places.entries())
      await page()
        .getByLabel(`${index + 1} is`, { exact: true })
        .selectOption(place);
    await on.previewed('3 becomes [rear-left]');
    await page().locator('.editor .check', { hasText: 'and so the 3 others' }).waitFor();
    await on.take('dipper');

    // One end says nothing without the other, and waits for it.
    await on.choose('levers/alpha from');
    await on.means('switch.locate.on');
    await page().locator('[name=part]').selectOption('low');
    await on.previewed('1700 becomes 1700 us');
    await page().locator('.editor button.main').click();
    await on.row('levers/alpha from').locator('.waits', { hasText: 'needs "high" as well' }).waitFor();
    await on.choose('levers/alpha to');
    await on.means('switch.locate.on');
    await page().locator('[name=part]').selectOption('high');
    await on.previewed('2100 becomes 2100 us');
    await on.take('dipper');

    // All that a number says in its digits is one press.
    await on.choose('habits/bell');
    await on.means('power.alarm');
    await page().locator('[name=part]').selectOption('bits');
    for (const [digit, word] of [
      [0, 'overlay'],
      [1, 'buzzer'],
      [3, 'lights'],
    ] as const)
      await page().getByLabel(`bit ${digit} is`, { exact: true }).selectOption(word);
    await on.previewed('13 becomes on, off, on');
    await on.take('dipper');

    await on.choose('habits/habits');
    await on.means('arming.beep');
    await page().locator('[name=bit]').fill('2');
    await editor().press('Tab');
    await on.previewed('becomes on');
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    await on.take('dipper');

    const told = JSON.parse(readFileSync(join(editor().folder, 'boards', 'dipper.json'), 'utf8'));
    assert.deepEqual(told.portRoles, {
      roles: { 'receiver.port': '2', 'telemetry.port': '5' },
      unused: '0',
    });
    assert.deepEqual(
      on.profile('dipper').map(({ port, means, items }) => port ?? means ?? items?.length ?? null),
      [
        ...['port1', 'port2', 'port3', 'port4', 'video.power', ...Array(4).fill('motor.order')],
        ...['switch.locate.on', 'switch.locate.on', 4, 3, null],
      ],
    );
    // All that a press said is taken back by one.
    await page().locator('#undo').click();
    await page()
      .locator('.counts')
      .filter({ hasText: /^12 of / })
      .waitFor();

    const script = [
      ...['[receiver]', 'port = port2', '[video]', 'power = 25 mW'],
      ...['[motor]', 'order = [front-left, front-right, rear-left, rear-right]', ''],
    ];
    const written = await handedOver(script.join('\n'));
    const changed = new Map([
      ['port 1 = 2', 'port 1 = 0'],
      ['port 2 = 0', 'port 2 = 2'],
      ['strength step = 2 (1..4)', 'strength step = 1 (1..4)'],
      ['motor 1 = 3', 'motor 1 = 1'],
      ['motor 2 = 4', 'motor 2 = 2'],
      ['motor 3 = 1', 'motor 3 = 3'],
      ['motor 4 = 2', 'motor 4 = 4'],
    ]);
    assert.equal(written, `${lines.map((line) => changed.get(line) ?? line).join('\n')}\n`);
  });

  it('says what lines are that were not understood, and they are then read, written and proved', async () => {
    const lines = [
      ...[
        'idle share ... 6',
        'first cut ... 225',
        'lamp colour ... 17',
        'lamp power ... 24',
        'wait long ... 59',
        'told at dusk ... by Ada',
      ],
      ...[
        'beeper >( 2700 )<',
        'siren >( 90 )<',
        '(*) taken in the shed, by Ada',
        'HARBOUR SIDE >>',
        'anchor ... 3',
      ],
    ];
    const on = await captured(lines);
    const left = page().locator('.left-lines');
    /** What is left, once the page has been drawn anew. */
    const leftNow = (...numbers: readonly number[]) =>
      editor().waitUntil(`lines ${numbers.join()} to be left`, async () => {
        const told = (await left.count()) === 0 ? [] : await left.locator('li code').allInnerTexts();
        return JSON.stringify(told) === JSON.stringify(numbers.map((number) => lines[number - 1]));
      });
    await leftNow(7, 8, 9, 10);

    await left.getByRole('button', { name: 'Line 10 is a heading' }).press('Enter');
    await leftNow(7, 8, 9);
    // What the line does not show is typed beside it.
    await left.getByLabel('Its part, of line 7').fill('beeper=2700');
    await left.getByRole('button', { name: 'Line 7 is a setting' }).press('Enter');
    await leftNow(9);
    await left.getByRole('button', { name: 'Line 9 is a comment' }).press('Enter');
    await leftNow();
    // What was read, and read wrongly, is said at its row.
    await on.choose('told at dusk');
    await page().locator('#misread').press('Enter');
    await page().getByLabel('Its part, of line 6').fill('told at');
    await page().getByRole('button', { name: 'Line 6 is a comment' }).press('Enter');
    await page()
      .locator('.counts')
      .filter({ hasText: /of 8 said/ })
      .waitFor();
    assert.deepEqual(
      on.profile('dipper').map(({ group, name }) => [group ?? [], name].flat().join(' / ')),
      [
        'idle share',
        'first cut',
        'lamp colour',
        'lamp power',
        'wait long',
        'told at dusk',
        'HARBOUR SIDE / anchor',
        'beeper',
        'siren',
      ],
    );

    const written = await handedOver('[own]\nsiren = 80\n');
    const settings = lines.filter((line) => !/^\(\*\)|^told/.test(line)).join('\n');
    assert.equal(written, `${settings.replace('( 90 )', '( 80 )')}\n`);
  });
});
