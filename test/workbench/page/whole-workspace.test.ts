import { strict as assert } from 'node:assert';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { oneWindow } from './one-window';

const files = {
  'club/habits.craft': 'let quiet = 90 Hz\n',
  'club/plover.craft': 'include "habits.craft"\n[gyro.filter.1]\nkind = butterworth\ncutoff = 2 * quiet\n',
  'knot.craft': 'include "club/habits.craft"\n[gyro.filter.1]\nkind = butterworth\ncutoff = quiet\n',
  'knot.craft.flown.json': '{}\n',
};

describe('crafts that nobody has opened', () => {
  const editor = oneWindow({ files });
  const onDisk = (name: string) => readFileSync(join(editor().folder, name), 'utf8');

  async function saved(name: string, text: string): Promise<void> {
    await editor().waitUntil(`${name} to hold ${text}`, async () => {
      return existsSync(join(editor().folder, name)) && onDisk(name).includes(text);
    });
  }

  /** The names of files and the codes of problems, as the list shows them. */
  function problem(text: string) {
    return editor().page.locator('.markers-panel .monaco-list-row', { hasText: text });
  }

  it('show among the problems what an edit of the club’s habits breaks in them, and take its constant’s new name', async () => {
    const { page } = editor();
    await editor().openFile('habits.craft');
    await editor().runCommand('View: Toggle Problems');
    await editor().goTo(1, 16);
    await editor().press('Delete');
    await editor().press('Delete');
    await editor().type('V');
    const isListed = (count: number) => async () => (await problem('line/wrong-dimension').count()) === count;
    await editor().waitUntil('both crafts to be listed', isListed(2));
    await problem('plover.craft').waitFor();
    await problem('knot.craft').waitFor();
    await editor().press('Backspace');
    await editor().type('Hz');
    await editor().waitUntil('none to be listed', isListed(0));

    await editor().goTo(1, 6);
    await editor().press('F2');
    const name = page.locator('.rename-box input');
    await name.fill('calm');
    await name.press('Enter');
    await editor().waitForText('let calm = 90 Hz');
    await editor().runCommand('File: Save All Files');
    await saved('club/plover.craft', 'cutoff = 2 * calm');
    await saved('knot.craft', 'cutoff = calm');
    // Between the two files, one uses a name that the other no longer has.
    await editor().waitUntil('no problem to be listed', async () => (await problem('line/').count()) === 0);
  });

  it('are found from an include, and follow a file that is renamed, with what is kept beside it', async () => {
    const { page } = editor();
    await editor().openFile('knot.craft');
    await editor().goTo(1, 14);
    await editor().runCommand('Go to References');
    const references = page.locator('.reference-zone-widget .ref-tree');
    await references.getByText('plover.craft').waitFor();
    await editor().press('Escape');
    await references.waitFor({ state: 'detached' });

    const explorer = page.locator('.explorer-folders-view');
    const renameTo = async (name: string, to: string) => {
      await explorer.locator('.monaco-list-row', { hasText: name }).first().click();
      await editor().press('F2');
      const box = explorer.locator('input');
      await box.fill(to);
      await box.press('Enter');
      const asked = page.locator('.monaco-dialog-box', { hasText: 'wants to make refactoring changes' });
      await asked.locator('.monaco-button', { hasText: 'OK' }).click();
    };
    await renameTo('club', 'society');
    await editor().waitForText('include "society/habits.craft"');
    await editor().runCommand('File: Save All Files');
    await saved('knot.craft', 'include "society/habits.craft"');
    await renameTo('knot.craft', 'godwit.craft');
    await saved('godwit.craft', 'include "society/habits.craft"');
    await saved('godwit.craft.flown.json', '{}');
    assert.equal(existsSync(join(editor().folder, 'knot.craft.flown.json')), false);
  });
});
