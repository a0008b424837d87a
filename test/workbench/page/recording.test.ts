import { strict as assert } from 'node:assert';
import { appendFileSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { simulatedFile } from '../../support/simulated-file';
import { type EditorDriver, everyTheme } from './driver';
import { oneWindow } from './one-window';

/** The same flight of a craft that shakes three times as much. */
function louder(text: string): string {
  const lines = text.split('\n');
  const at = lines.findIndex((line) => line.startsWith('time'));
  const gyro = (lines[at] ?? '').split(',').map((heading) => heading.startsWith('gyro'));
  const rows = lines.map((line, row) =>
    row <= at || line === ''
      ? line
      : line
          .split(',')
          .map((cell, column) => (gyro[column] === true ? (3 * Number(cell)).toFixed(2) : cell))
          .join(','),
  );
  return rows.join('\n');
}

async function openRacer(editor: EditorDriver): Promise<void> {
  await editor.openFile('sandmartin.craft');
  await editor.statusBar(/to mend/);
}

describe('a recording', () => {
  const editor = oneWindow();
  const page = (index = 0) => editor().webview(index);

  /** Another flight of the racer, shaken more. */
  function flyAgain(layout: string): void {
    const { folder } = editor();
    writeFileSync(join(folder, 'flights', 'dusk.csv'), simulatedFile({ tone: 160, layout }));
    const lines = '\n[flight.dusk]\ndate = 2026-06-12\npack = sprint\nrecording = "flights/dusk.csv"\n';
    appendFileSync(join(folder, 'sandmartin.craft'), lines);
  }

  /** By the press above the line that names it. */
  async function openFromLine(line: RegExp): Promise<void> {
    await editor().goTo(editor().lineOf('sandmartin.craft', line));
    await editor().page.locator('.codelens-decoration a', { hasText: 'Open Recording' }).last().click();
  }

  it('of the demo is told at once for the script that names it, drawn and as tables', async () => {
    await openRacer(editor());
    await openFromLine(/^recording .*before-the-rain/);
    await page().locator('#shake .axis').first().waitFor();
    assert.match(await page().locator('.about').innerText(), /told for sandmartin\.craft/);
    assert.match(await page().locator('main').innerText(), /Simulated: no craft flew this/);
    const questions = ['shake', 'follow', 'late', 'motors', 'pack', 'hover', 'link', 'gains'];
    const ids = await page()
      .locator('main section')
      .evaluateAll((all) => all.map(({ id }) => id));
    assert.deepEqual(
      ids.filter((id) => questions.includes(id)),
      questions,
    );
    assert.equal(await page().locator('#shake .drawn path.curve').count(), 6);
    const heat = page().locator('.readable[aria-label^="Noise about roll: Hz, against motor speed"]');
    await heat.focus();
    await editor().press('ArrowRight');
    assert.match((await heat.getAttribute('aria-valuetext')) ?? '', /Hz: (loudest at|never flown)/);
    await followsAsDrawn();
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
  });

  /** How it follows, how late it is and what gains come to, beside what the script says. */
  async function followsAsDrawn(): Promise<void> {
    const row = async (section: string, name: string) =>
      page().locator(`#${section} tbody tr`, { hasText: name }).last().innerText();
    const drawn = page().locator('.readable[aria-label^="How roll follows a sine"]');
    // Gain, phase and coherence as measured; gain and phase of the model.
    assert.equal(await drawn.locator('path.curve').count(), 3);
    assert.equal(await drawn.locator('path.filter').count(), 2);
    await drawn.focus();
    await editor().press('ArrowRight');
    assert.match(
      (await drawn.getAttribute('aria-valuetext')) ?? '',
      /^[\d.]+ Hz: as measured −?[\d.]+ dB, −[\d.]+ °, coherence [\d.]+; the script’s model in the hover, pack full −?[\d.]+ dB, −[\d.]+ °$/,
    );
    assert.match(await row('follow', 'Follows up to'), /[\d.]+ Hz\s*[\d.]+ to [\d.]+ Hz.*not known/s);
    assert.match(
      await row('late', 'Phase margin'),
      /deg.*script: [\d.]+ deg in the hover; .* at the worst place/s,
    );
    assert.match(
      await page().locator('#late').innerText(),
      /All of this about yaw: The sticks .* an observer beside you/s,
    );
    assert.match(await row('gains', 'Proportional'), /%\/\(deg\/s\).*script: 0\.052 %\/\(deg\/s\)/s);
  }

  it('leads from a tone that the filters let through to a notch, which is written, looked at and undone', async () => {
    await openRacer(editor());
    await openFromLine(/^recording .*before-the-rain/);
    const finding = page().locator('[data-finding="shake/tone-let-through"]').first();
    await finding.waitFor();
    assert.match(await finding.innerText(), /A tone of 118 Hz about roll stands \d+ dB over the noise/);
    const write = finding.locator('button.write').first();
    assert.match(await write.innerText(), /notch at 118 Hz/);
    await write.click();
    await page().locator('#written').waitFor();
    await page().locator('#written button', { hasText: 'See What It Changes' }).click();
    await page().locator('#compared-shake').waitFor();
    const row = page()
      .locator('#compared-shake tr', { hasText: 'at 118 Hz, what the filters leave' })
      .first();
    assert.match(await row.innerText(), /−0\.\d+ dB.*−\d{2}[\d.]* dB.*better/s);
    assert.equal(await page().locator('#compared-shake .drawn path.curve').count(), 6);
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    await editor().runCommand('View: Focus First Editor Group');
    await editor().goTo(editor().lineOf('sandmartin.craft', /^\[derivative\]/));
    await editor().waitForText('[gyro.filter.3]');
    await editor().waitForText('# measured on 2026-05-14');
    await editor().press('Control+Z');
    await editor().waitUntil('the notch to be gone', async () => {
      const text = await editor().visibleText();
      return /\[derivative\]/.test(text) && !/gyro\.filter\.3/.test(text);
    });
    // The editor saves what was undone a second later, and goes on with that though the text is closed meanwhile.
    await editor().waitUntil('the notch to be gone from the file', async () => {
      const text = editor().savedText('sandmartin.craft');
      return text !== undefined && !text.includes('gyro.filter.3');
    });
  });

  it('of a logger that nobody has confirmed has its columns looked through once', async () => {
    flyAgain('unitless');
    await openRacer(editor());
    await openFromLine(/^recording .*dusk/);
    await page().locator('fieldset.column').first().waitFor();
    for (const theme of everyTheme) assert.deepEqual(await editor().accessFaultsIn(theme), [], theme);
    const pitch = page().locator('fieldset', { has: page().locator('legend', { hasText: 'gyro y' }) });
    await pitch.locator('input[type=checkbox]').check();
    const scale = pitch.locator('input[inputmode=decimal]').first();
    await scale.fill('one');
    const confirm = page().locator('button', { hasText: 'Confirm and Keep' }).first();
    await confirm.click();
    await page().locator('#columns-fault', { hasText: '“one” is no number' }).waitFor();
    await scale.fill('1');
    await confirm.click();
    await editor().page.locator('.quick-input-widget:visible input[type=text]').fill('tern');
    await editor().press('Enter');
    await page().locator('#shake .axis').first().waitFor();
    assert.ok(existsSync(join(editor().folder, 'recordings', 'tern.json')));
    await page().locator('button', { hasText: 'What the Columns Hold' }).click();
    await pitch.waitFor();
    assert.ok(await pitch.locator('input[type=checkbox]').isChecked());
  });

  it('is put beside another, and stands in a row of flights', async () => {
    flyAgain('bracketed');
    await openRacer(editor());
    await openFromLine(/^recording .*dusk/);
    await page().locator('button', { hasText: 'Compare with Another' }).click();
    const rows = editor().page.locator('.quick-input-list .monaco-list-row');
    await rows.filter({ hasText: 'before-the-rain.csv' }).first().click();
    await page().locator('#compared-shake').waitFor();
    const told = await page().locator('#compared-shake table').last().innerText();
    assert.match(told, /Tone about roll at 160 Hz, above the floor/);
    assert.match(told, /Shaking about roll/);
    assert.match(await page().locator('#compared-late').innerText(), /Phase margin, roll/);
    assert.ok((await page().locator('#compared-follow .drawn path.curve').count()) >= 6);
    assert.deepEqual(await editor().accessFaults(), []);
    await page().locator('button', { hasText: 'Back to the Recording' }).click();
    await page().locator('button', { hasText: 'Noise from Flight to Flight' }).click();
    await page().locator('.grown-row').first().waitFor();
    const flights = await page().locator('tbody tr').allInnerTexts();
    assert.deepEqual(
      flights.map((text) => /(before-the-rain|dusk)\.csv/.exec(text)?.[1]),
      ['before-the-rain', 'dusk'],
    );
    for (const text of flights) assert.match(text, /\d deg\/s/);
    assert.deepEqual(await editor().accessFaults(), []);
  });

  it('says what has grown since the flight before, once that was read', async () => {
    await openRacer(editor());
    await openFromLine(/^recording .*before-the-rain/);
    await page().locator('#shake .axis').first().waitFor();
    assert.equal(await page().locator('[data-finding="shake/grown"]').count(), 0);
    flyAgain('bracketed');
    const flights = join(editor().folder, 'flights');
    const before = readFileSync(join(flights, 'before-the-rain.csv'), 'utf8');
    writeFileSync(join(flights, 'dusk.csv'), louder(before));
    await editor().runCommand('View: Focus First Editor Group');
    await editor().goTo(editor().lineOf('sandmartin.craft', /^recording .*dusk/));
    // The press above the later flight comes a moment after its lines.
    await editor().page.locator('.codelens-decoration a', { hasText: 'Open Recording' }).nth(1).click();
    const dusky = page(1);
    const grown = dusky.locator('#findings [data-finding="shake/grown"]').first();
    await grown.waitFor();
    assert.match(
      await grown.innerText(),
      /It shakes [\d.]+ deg\/s \([\d.]+ to [\d.]+\) about \w+, where it was [\d.]+ deg\/s .* in .*before-the-rain\.csv/,
    );
    assert.deepEqual(await editor().accessFaults(), []);
  });
});

describe('a recording that nobody has opened yet', () => {
  const opened = oneWindow();

  it('says on the build sheet what it said when it was read, and is opened from there', async () => {
    const editor = opened();
    // What was read is remembered under its name: this one has another.
    const [script, flights] = [join(editor.folder, 'sandmartin.craft'), join(editor.folder, 'flights')];
    renameSync(join(flights, 'before-the-rain.csv'), join(flights, 'nobody-looked.csv'));
    const text = readFileSync(script, 'utf8');
    writeFileSync(script, text.replace('before-the-rain.csv', 'nobody-looked.csv'));
    await openRacer(editor);
    await editor.runCommand('Propsoff: Show Build Sheet');
    const row = editor.webview().locator('#learned .recording');
    await row.filter({ hasText: 'not read yet' }).waitFor();
    await row.locator('button').click();
    await editor.webview(1).locator('#shake .axis').first().waitFor();
    await row.filter({ hasText: /simulated; shakes most about \w+: [\d.]+ deg\/s/ }).waitFor();
    assert.equal(await row.locator('svg path').count(), 1);
    const measured = editor.webview().locator('#how-late tr[data-measured="roll-phase-margin"]');
    assert.match(
      await measured.innerText(),
      /^measured on 2026-05-14, sprint: [\d.]+ deg \([\d.]+ to [\d.]+ deg\)$/,
    );
    assert.deepEqual(await editor.accessFaults(), []);
  });
});
