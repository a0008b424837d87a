import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyTheme } from './driver';
import { oneWindow } from './one-window';

/** A craft of which nobody has said what its motors are. */
const craft = [
  '[craft]',
  'name = "Sanderling"',
  'layout = quad-x',
  'mass = 138 g',
  '[prop]',
  'diameter = 3 in',
  'pitch = 3.2 in',
  'blades = 3',
  '[motor]',
  'kv = 3800 rpm/V',
  '[pack.two]',
  'chemistry = lipo',
  'cells = 2',
  'capacity = 650 mAh',
  'mass = 42 g',
  '',
].join('\n');

describe('what is not known yet, on the build sheet', () => {
  const opened = oneWindow({ files: { 'sanderling.craft': craft } });

  it('is told first, keeps its rows, is one press from the lines that it takes, and then from what makes it surer', async () => {
    const editor = opened();
    await editor.openFile('sanderling.craft');
    await editor.runCommand('Propsoff: Show Build Sheet');
    const page = editor.webview();
    const [first, size] = [page.locator('.unknowns li').first(), 'motor.stator-diameter'];
    await first.getByText(/^Hover, thrust, minutes, .*: not known yet\./).waitFor();
    assert.match(await first.innerText(), new RegExp(`Write ${size} and motor.stator-height, or`));
    for (const theme of everyTheme) assert.deepEqual(await editor.accessFaultsIn(theme), [], theme);

    const row = page.locator('tr[data-figure="hover-throttle"]');
    assert.match(await row.innerText(), /Throttle in the hover\s+not known yet/);
    await row.locator('button.title').click();
    assert.match(await page.locator('#hover-throttle-why').innerText(), new RegExp(`Write ${size}`));

    await first.locator('button', { hasText: 'Write motor.mass instead' }).click();
    await editor.statusBar(/Ln 11, Col 8/);
    await first.getByText('Fill in motor.mass.').waitFor();
    await editor.page.keyboard.type('8 g ');
    await page.locator('tr[data-figure="hover-throttle"] .value').waitFor();
    const surer = page.locator('#surer');
    await surer.locator('button', { hasText: 'Try Each Measurement' }).click();
    const measured = surer.locator('.unknowns li').first();
    await measured.getByText(/^Throttle in the hover: .*the span falls from .* to /).waitFor();
    assert.equal(await measured.locator('button').count(), 1);
    assert.deepEqual(await editor.accessFaults(), []);
    await editor.runCommand('File: Save');
    const saved = () => readFileSync(join(editor.folder, 'sanderling.craft'), 'utf8');
    await editor.waitUntil('the line to be saved', async () =>
      /^mass = 8 g # Mass of one motor, in g$/m.test(saved()),
    );
  });
});
