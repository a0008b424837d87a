import { strict as assert } from 'node:assert';
import { withScratch } from '../../support/scratch';
import { type EditorDriver, openEditor } from './driver';

/** The walkthrough as a pilot goes through it. */
class Walkthrough {
  constructor(private readonly editor: EditorDriver) {}

  /** Opens a step by its title. */
  async open(title: string): Promise<void> {
    const step = this.step(title);
    await step.waitFor();
    await this.editor.waitUntil(`${title} to open`, async () => {
      if (/\bexpanded\b/.test((await step.getAttribute('class')) ?? '')) return true;
      await step.locator('.step-title').click();
      return false;
    });
  }

  async press(button: string): Promise<void> {
    await this.editor.page
      .locator('.getting-started-step.expanded')
      .getByText(button, { exact: true })
      .click();
  }

  /** Waits until a step is ticked off. */
  async waitForTick(title: string): Promise<void> {
    await this.step(title).locator('.codicon.complete').first().waitFor({ state: 'attached' });
  }

  async isTicked(title: string): Promise<boolean> {
    return (await this.step(title).locator('.codicon.complete').count()) > 0;
  }

  private step(title: string) {
    const { page } = this.editor;
    return page.locator('.getting-started-step').filter({ has: page.getByText(title, { exact: true }) });
  }
}

/** A folder in which nobody has written a craft script yet, in an editor that has just got the extension. */
async function withNewcomer(
  language: string | null,
  run: (editor: EditorDriver) => Promise<void>,
): Promise<void> {
  await withScratch({ 'folder/notes.txt': 'bench on Thursday\n' }, async (scratch) => {
    const editor = await openEditor({
      folder: scratch.file('folder'),
      width: 1400,
      height: 900,
      ...(language === null ? {} : { language }),
    });
    try {
      await editor.page.locator('.activitybar').getByLabel('Propsoff').first().click();
      await editor.webview().locator('.empty').waitFor();
      await run(editor);
    } finally {
      await editor.close();
    }
  });
}

/** Goes to the next finding and takes the first way to mend it, as the walkthrough says. */
async function mendNext(editor: EditorDriver): Promise<void> {
  await editor.press('F8');
  await editor.page.locator('.marker-widget').waitFor();
  const ways = editor.page.locator('.action-widget .monaco-list-row.action');
  await editor.waitUntil('a way to mend it', async () => {
    await editor.press('Control+.');
    return ways
      .first()
      .waitFor({ timeout: 5_000 })
      .then(
        () => true,
        () => false,
      );
  });
  await editor.press('Enter');
}

describe('the first ten minutes', () => {
  it('lead from an empty build sheet to a bench card, each step ticked off when it is done', () =>
    withNewcomer(null, async (editor) => {
      for (const theme of ['dark', 'light', 'light high contrast', 'dark high contrast'] as const) {
        assert.deepEqual(await editor.accessFaultsIn(theme), [], theme);
      }
      await editor.webview().getByText('First Craft in Ten Minutes').click();
      const walk = new Walkthrough(editor);
      await walk.open('Make a craft script');
      await walk.press('Open a First Craft');
      await walk.waitForTick('Make a craft script');
      await editor.statusBar('0 to mend, 0 risks');

      // With the walkthrough in front, a button means the script beside it, on whose first setting the cursor is.
      await walk.open('Read what a line does');
      assert.equal(await walk.isTicked('Read what a line does'), false);
      await editor.page.locator('.tab', { hasText: 'Untitled-1' }).click();
      await editor.hoverOver('mass');
      await walk.waitForTick('Read what a line does');

      await walk.open('Mend a finding');
      await walk.press('Open the Practice Craft');
      for (const left of [2, 1, 0]) {
        await editor.statusBar(`${left + 1} to mend`);
        await mendNext(editor);
        await editor.statusBar(`${left} to mend`);
        await walk.waitForTick('Mend a finding');
      }

      await walk.open('See the whole craft');
      await walk.press('Show Build Sheet');
      await walk.waitForTick('See the whole craft');

      await walk.open('Copy it for the board');
      await walk.press('Copy Text for the Board');
      await editor.page.locator('.monaco-dialog-box').getByText('Copy the Next Piece').click();
      await walk.waitForTick('Copy it for the board');
      const clipboard = await editor.page.evaluate<string>('navigator.clipboard.readText()');
      assert.match(clipboard, /warn-cell-volts <- 360/, 'the last piece, with what was mended');

      await walk.open('Print the bench card');
      await walk.press('Open Bench Card');
      await walk.waitForTick('Print the bench card');
      await editor.waitUntil('the card', async () => {
        // The walkthrough's picture is a page too, so the card is looked for in all.
        const found = await Promise.all(
          editor.page.frames().map((frame) => frame.getByText('Propellers off', { exact: true }).count()),
        );
        return found.some((count) => count > 0);
      });
    }));

  it('are in German in a German editor: commands, walkthrough, build sheet and what the client says', () =>
    withNewcomer('de', async (editor) => {
      const empty = await editor.webview().locator('.empty').innerText();
      assert.match(empty, /Gerade ist kein Copter-Skript offen\./);
      await editor.webview().getByText('Erster Copter in zehn Minuten').click();
      const walk = new Walkthrough(editor);
      await walk.open('Ein Copter-Skript anlegen');
      await walk.press('Ersten Copter öffnen');
      await editor.statusBar('0 zu beheben, 0 Risiken');
      await editor.runCommand('Propsoff: Diese Zeile erklären');
      await editor.page.locator('.tab').filter({ hasText: 'Zeile 5 von' }).waitFor();
    }));
});
