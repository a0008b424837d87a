import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openEditor } from '../workbench/page/driver';
import { type Measure, timesOf, within } from './measure';

const craft = 'bittern.craft';
const keystrokes = 40;
/** ms: what still feels immediate. */
const most = 100;

/** From a keystroke in the real editor to the changed figure in the build sheet, largest demo craft. */
export async function panelMeasures(root: string): Promise<readonly Measure[]> {
  const editor = await openEditor({ folder: join(root, 'test/demo') });
  try {
    await editor.openFile(craft);
    await editor.runCommand('Propsoff: Show Build Sheet');
    const figure = editor.webview().locator('tr[data-figure=gyro-filter-delay] .value').first();
    await figure.waitFor();
    const { line, column } = placeOfFactor(join(root, 'test/demo', craft));
    await editor.goTo(line, column);
    const page = await editor.frame();
    await page.evaluate(watchFigure);
    await editor.page.evaluate(watchKeys);
    for (let stroke = 0; stroke < keystrokes; stroke += 1) {
      const before = await figure.innerText();
      await editor.press(stroke % 2 === 0 ? '1' : 'Backspace');
      await editor.waitUntil('the figure to change', async () => (await figure.innerText()) !== before);
    }
    const keys = await editor.page.evaluate<number[]>('window.keysAt');
    const changes = await page.evaluate<number[]>('window.changedAt');
    const waits = keys.map((at) => (changes.find((change) => change >= at) ?? Number.NaN) - at);
    return [within('keystroke to changed figure in the panel, real editor', timesOf(waits), most)];
  } finally {
    await editor.close();
  }
}

/** Just behind the digit of a filter's factor: one more digit makes it another filter. */
function placeOfFactor(path: string): { readonly line: number; readonly column: number } {
  const lines = readFileSync(path, 'utf8').split('\n');
  const line = lines.findIndex((each) => /^cutoff += \d \*/.test(each));
  if (line < 0) throw new Error(`${craft} has no filter to change`);
  return { line: line + 1, column: (lines[line] ?? '').search(/\d \*/) + 2 };
}

/** Runs in the page of the sheet: notes when the figure has been drawn anew. */
const watchFigure = `(() => {
  const text = () => document.querySelector('tr[data-figure=gyro-filter-delay] .value')?.textContent;
  let shown = text();
  window.changedAt = [];
  new MutationObserver(() => {
    if (text() === shown) return;
    shown = text();
    window.changedAt.push(Date.now());
  }).observe(document.body, { childList: true, subtree: true });
})()`;

/** Runs in the editor's window: notes when keys go down. */
const watchKeys = `(() => {
  window.keysAt = [];
  addEventListener('keydown', () => window.keysAt.push(Date.now()), { capture: true });
})()`;
