import { strict as assert } from 'node:assert';
import { oneWindow } from './one-window';

const script = '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 ms\n';
/** A constant that nothing uses, and a number that can be said otherwise. */
const idle = 'let quiet = 90 Hz\n[gyro.filter.1]\nkind = butterworth\ncutoff = 120 Hz\n';

describe('a finding, as a person meets it', () => {
  const opened = oneWindow({ files: { 'wren.craft': script, 'dunnock.craft': idle } });

  it('leads to the story of its check from the hover and from the list of problems', async () => {
    const editor = opened();
    await editor.openFile('wren.craft');
    await editor.waitForSquiggles('error');
    assert.match(await editor.hoverOver('ms'), /This is a time \(ms\)/);
    const { page } = editor;
    await page.locator('.monaco-hover:visible a', { hasText: 'line/wrong-dimension' }).click();
    const story = editor.webview().getByText('The unit measures the right thing');
    await story.waitFor();
    assert.match(await editor.webview().locator('body').innerText(), /To do: .*Source: /s);
    await page.locator('.tab', { hasText: 'wrong-dimension' }).locator('.codicon-close').click();
    await story.waitFor({ state: 'detached' });

    await editor.runCommand('View: Toggle Problems');
    await page.locator('.markers-panel a', { hasText: 'line/wrong-dimension' }).click();
    await story.waitFor();
  });

  it('greys what does nothing, and a number is converted or named from the menu', async () => {
    const editor = opened();
    await editor.openFile('dunnock.craft');
    const { page } = editor;
    await page.locator('.monaco-editor .squiggly-inline-unnecessary').first().waitFor();
    for (const theme of ['light', 'dark'] as const) {
      await editor.setTheme(theme);
      const greyed = page.locator('.monaco-editor .squiggly-inline-unnecessary').first();
      await editor.waitUntil('the unused name to be paler', async () => {
        const opacity = await greyed.evaluate(
          (one) => one.ownerDocument.defaultView?.getComputedStyle(one).opacity,
        );
        return Number(opacity) < 0.9;
      });
    }
    await editor.focusEditor();
    await editor.goTo(4, 11);
    await editor.takeFix('Write it as 0.12 kHz');
    await editor.waitForText('cutoff = 0.12 kHz');
    await editor.goTo(4, 11);
    await editor.takeFix('Extract a constant: gyro-cutoff = 0.12 kHz');
    await editor.waitForText('let gyro-cutoff = 0.12 kHz');
    await editor.waitForText('cutoff = gyro-cutoff');
  });
});
