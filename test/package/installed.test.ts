import { strict as assert } from 'node:assert';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type EditorDriver, openEditor } from '../workbench/page/driver';
import { packedExtension } from './made';

interface Registered {
  readonly identifier: { readonly id: string };
  readonly location: { readonly path: string };
}

describe('the packed extension, installed', () => {
  let editor: EditorDriver | undefined;

  before(async () => {
    // Suggestions may come up late, when Enter is meant to end the line.
    const settings = { 'editor.acceptSuggestionOnEnter': 'off' };
    editor = await openEditor({ package: await packedExtension(), settings });
  });

  after(async () => {
    await editor?.close();
  });

  function opened(): EditorDriver {
    assert.ok(editor);
    return editor;
  }

  it('lies where the editor unpacked it, and nothing of the source tree is in use', () => {
    const installed = join(opened().home, 'extensions');
    const list = readFileSync(join(installed, 'extensions.json'), 'utf8');
    const registered = JSON.parse(list) as readonly Registered[];
    assert.deepEqual(
      registered.map(({ identifier }) => identifier.id),
      ['propsoff.propsoff'],
    );
    const [place = ''] = registered.map(({ location }) => location.path);
    assert.ok(place.startsWith(installed), place);
    assert.deepEqual(
      readdirSync(place).filter((name) => ['server', 'test', 'node_modules'].includes(name)),
      [],
    );
  });

  it('checks the demo craft, and a mistake in it; a hover tells the right name', async () => {
    await opened().openFile('sandmartin.craft');
    await opened().statusBar(/to mend/);
    await opened().press('Control+End');
    await opened().type('\n[arming]\ntilt-limt = 60 deg\n');
    await opened().waitForSquiggles('error');
    assert.match(await opened().hoverOver('tilt-limt'), /tilt-limit/);
  });

  it('completes a name', async () => {
    await opened().type('still');
    const labels = await opened().suggestions();
    assert.ok(labels.includes('still-limit'), labels.join(', '));
    await opened().press('Escape');
  });

  it('shows the build sheet of the craft', async () => {
    await opened().runCommand('Propsoff: Show Build Sheet');
    assert.equal(await opened().webview().locator('h1').innerText(), 'Sandmartin');
  });

  it('brings its starters along', async () => {
    await opened().runCommand('Propsoff: New Craft Script');
    const offered = opened().page.locator('.quick-input-widget:visible .monaco-list-row');
    await offered.first().click();
    await opened().waitForText('[craft]');
  });
});
