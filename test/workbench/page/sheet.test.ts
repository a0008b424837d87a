import { strict as assert } from 'node:assert';
import { type EditorDriver, openEditor } from './driver';

describe('the build sheet', () => {
  let opened: EditorDriver | undefined;
  const editor = (): EditorDriver => opened ?? assert.fail('no editor');
  const complaints: string[] = [];

  before(async () => {
    opened = await openEditor();
    opened.page.on('console', (message) => {
      if (/content security policy|refused to (load|apply|execute)/i.test(message.text()))
        complaints.push(message.text());
    });
    await opened.openFile('sandmartin.craft');
    await opened.runCommand('Propsoff: Show Build Sheet');
    await opened.webview().locator('h1').waitFor();
  });

  after(async () => {
    await opened?.close();
  });

  it('tells of which craft it is, and its parts', async () => {
    const page = editor().webview();
    assert.equal(await page.locator('h1').innerText(), 'Sandmartin');
    assert.ok((await page.locator('details.part h2').allInnerTexts()).length >= 3);
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

  it('raises no complaint about its content (J03)', () => assert.deepEqual(complaints, []));

  it('stands beside a status bar that counts', async () => {
    assert.match(await editor().statusBar(/to mend/), /^0 to mend, 0 risks$/);
  });
});
