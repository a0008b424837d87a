import { strict as assert } from 'node:assert';
import type { EditorDriver } from './driver';
import { oneWindow } from './one-window';

/** Answers the question that is open, once it is the one with this number. */
async function answer(editor: EditorDriver, number: number, text: string): Promise<void> {
  const box = editor.page.locator('.quick-input-widget:visible');
  await box.getByText(`(${number} of 4)`).waitFor();
  await box.locator('input[type=text]').fill(text);
}

describe('what the editor proposes', () => {
  const opened = oneWindow({
    width: 1400,
    height: 900,
    files: { 'main.craft': '\n', 'robin.craft': '[receiver]\nsupply = 9 V\n' },
  });

  it('are parts and sections in the order of the job, values that pilots write, and those of scripts around', async () => {
    const editor = opened();
    await editor.openFile('main.craft');
    const first = await editor.suggestions();
    assert.deepEqual(first.slice(0, 4), ['Craft: shape and mass', '[craft]', 'Flight board', '[board]']);
    await editor.press('Escape');
    // The editor's own filter finds a part by an everyday word.
    await editor.type('radio');
    await editor.acceptSuggestion('Receiver');
    await editor.waitForText('[receiver]');
    assert.match(await editor.visibleText(), /link {3}= crsf\s+supply = 5 V\s+order {2}= AETR/);
    await editor.press('Escape');
    await editor.press('Escape');
    await editor.goTo(4, 10);
    await editor.press('Shift+End');
    await editor.press('Delete');
    const values = await editor.suggestions();
    assert.equal(values[0], '5 V');
    assert.ok(values.includes('9 V'), values.join(', '));
    assert.ok(!values.includes('3.2 V'), values.join(', '));
    const why = editor.page.locator('.suggest-widget.visible .details-label');
    assert.ok((await why.allInnerTexts()).some((text) => text.includes('robin.craft, line 2')));
  });
});

describe('New Craft Script', () => {
  const opened = oneWindow({ width: 1400, height: 900, files: { 'notes.txt': 'bench\n' } });

  it('has starters by purpose, and one for a captured text', async () => {
    const editor = opened();
    await editor.runCommand('Propsoff: New Craft Script');
    const rows = editor.page.locator('.quick-input-widget:visible .monaco-list-row');
    await rows.first().waitFor();
    const labels = await rows.locator('.label-name').allInnerTexts();
    for (const label of ['Racer', 'Freestyle', 'Hall craft', 'Long flight', 'From a sales page…'])
      assert.ok(
        labels.some((text) => text.includes(label)),
        `${label}: ${labels.join(', ')}`,
      );
    await rows.filter({ hasText: 'From a captured text…' }).click();
    await editor.page.locator('.quick-input-widget:visible').getByText('From the Clipboard').waitFor();
  });

  it('asks what a sales page tells, and writes a script that shows figures', async () => {
    const editor = opened();
    await editor.runCommand('Propsoff: New Craft Script');
    const rows = editor.page.locator('.quick-input-widget:visible .monaco-list-row');
    await rows.filter({ hasText: 'From a sales page…' }).click();
    await answer(editor, 1, '3 in');
    await editor.press('Enter');
    await answer(editor, 2, 'fast');
    await editor.page.locator('.quick-input-message').getByText('1950kv').waitFor();
    await answer(editor, 2, '3800');
    await editor.press('Enter');
    await answer(editor, 3, '4S');
    await editor.press('Enter');
    await answer(editor, 4, '');
    await editor.press('Enter');
    await editor.waitForText('3800 rpm/V');
    await editor.runCommand('Propsoff: Show Build Sheet');
    const sheet = editor.webview();
    await sheet.getByText('Thrust-to-weight at full throttle, pack half used').first().waitFor();
    assert.equal(await sheet.getByText('Hover, thrust, minutes').count(), 0);
  });
});
