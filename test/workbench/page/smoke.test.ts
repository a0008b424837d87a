import { strict as assert } from 'node:assert';
import { type EditorDriver, openEditor } from './driver';

describe('what a person sees', () => {
  let editor: EditorDriver | undefined;

  before(async () => {
    editor = await openEditor();
  });

  after(async () => {
    await editor?.close();
  });

  it('a mistyped name is underlined, and its hover tells the right one', async () => {
    assert.ok(editor);
    await editor.openFile('sandmartin.craft');
    await editor.press('Control+End');
    await editor.type('\n[arming]\ntilt-limt = 60 deg\n');
    await editor.waitForSquiggles('error');
    assert.match(await editor.hoverOver('tilt-limt'), /tilt-limit/);
  });
});
