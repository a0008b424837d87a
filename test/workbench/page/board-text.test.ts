import { strict as assert } from 'node:assert';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { boardOf } from '../../support/listing-shapes/generate';
import { printed } from '../../support/listing-shapes/print';
import type { ShapeName } from '../../support/listing-shapes/shapes';
import { type EditorDriver, openEditor } from './driver';

/** Listings of boards that nobody has heard of. */
const shapes: readonly ShapeName[] = ['stated', 'brackets', 'paths'];

const draws = Array.from({ length: 12 }, (_, index) => ({ look: index * 7, group: index, seed: index * 31 }));

/** Pastes a text as a pilot does: into a new file of the editor, from the clipboard. */
async function pasted(editor: EditorDriver, text: string): Promise<void> {
  await editor.runCommand('File: New Untitled Text File');
  await editor.page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(text)})`);
  await editor.press('Control+V');
}

describe('any board’s text', () => {
  let opened: EditorDriver | undefined;
  const editor = (): EditorDriver => opened ?? assert.fail('no editor');
  const clipboard = () => editor().page.evaluate<string>('navigator.clipboard.readText()');
  const notified = (text: string) =>
    editor().page.locator('.notification-toast', { hasText: text }).first().waitFor();

  beforeEach(async () => {
    opened = await openEditor();
  });

  afterEach(async () => {
    await opened?.close();
  });

  for (const shape of shapes)
    it(`goes round with no meaning confirmed: ${shape}`, async () => {
      const listing = printed(boardOf({ shape, choices: 3, style: 0, dirt: [], draws }));
      await pasted(editor(), listing.text);
      await editor().runCommand('Propsoff: Use as Board Text');
      await notified(`${listing.settings.length} settings in`);
      const profile = join(editor().folder, 'boards', 'board.json');
      assert.ok(existsSync(profile));
      const first = listing.settings[1] ?? assert.fail('no setting');
      const story = await editor().hoverOver(first.name);
      assert.match(story, /nobody has said what it means/);
    });

  it('is explained, mended, copied back and proved in the editor', async () => {
    const lines = [
      '== calm ==',
      'first-cut ~> 225 (from 50 to 400)',
      'slope ~> steep (one of gentle, steep)',
      'lamp ~> yes',
      '== wake ==',
      'spin-up ~> 6',
      'horn-delay ~> 40',
    ];
    await pasted(editor(), `${lines.join('\n')}\n`);
    await editor().runCommand('Propsoff: Use as Board Text');
    await notified('5 settings in 2 groups were found; every line was understood.');
    assert.ok(existsSync(join(editor().folder, 'board.boardtext')));

    const outline = editor().page.locator('.outline-pane, .outline-tree').first();
    await editor().runCommand('Explorer: Focus on Outline View');
    await outline.locator('.monaco-list-row', { hasText: 'wake' }).first().waitFor();

    const story = await editor().hoverOver('first-cut');
    assert.match(story, /nobody has said what it means/);
    assert.match(story, /50 to 400/);

    const path = join(editor().folder, 'board.boardtext');
    const save = (from: string, to: string) =>
      writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
    save('horn-delay', 'horn-dealy');
    await editor().waitForText('horn-dealy');
    await editor().waitForSquiggles('warning');
    await editor().goTo(7, 3);
    assert.ok((await editor().quickFixes()).some((fix) => fix.includes('Write horn-delay')));
    await editor().press('Escape');
    save('horn-dealy', 'horn-delay');
    await editor().waitForNoSquiggles('warning');
    save('spin-up ~> 6', 'spin-up ~> 7');
    await editor().waitForText('spin-up ~> 7');

    await editor().runCommand('Propsoff: Copy Text for the Board');
    await notified('settings for');
    assert.match(await clipboard(), /spin-up ~> 7\n/);

    const capture = `${lines.join('\n').replace('lamp ~> yes', 'lamp ~> no')}\n`;
    await editor().page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(capture)})`);
    await editor().runCommand('Propsoff: Compare with Captured Text');
    await editor()
      .page.locator('.quick-input-list .monaco-list-row', { hasText: 'clipboard' })
      .first()
      .click();
    await editor().waitForText('spin-up');
  });
});
