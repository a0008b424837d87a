import { strict as assert } from 'node:assert';
import { plover } from '../../support/plover';
import { oneWindow } from './one-window';

/** Its profile. */
const profile = {
  name: 'plover',
  text: {
    forms: {
      container: 'lines',
      lines: [{ form: '{name} ... {value}' }],
      beside: [' ({remark})'],
      headings: [],
      closers: [],
      indent: 'none',
      comments: [],
      opening: [],
      closing: [],
      prompts: [],
      decimal: '.',
    },
  },
  settings: [
    { name: 'arm low', means: 'switch.arm.on', as: 'low' },
    { name: 'arm high', means: 'switch.arm.on', as: 'high' },
    { name: 'arm stick', means: 'switch.arm.channel' },
    { name: 'tilt limit', means: 'arming.tilt-limit', counts: { unit: 'deg' } },
  ],
};

const accept = 'Accept this risk: safe/arms-at-any-tilt, beside the text';

describe('a risk of a board’s text that knows no comments', () => {
  const editor = oneWindow({
    files: {
      'plover.boardtext': plover,
      'boards/plover.json': JSON.stringify(profile),
      'my.craft': 'include "plover.boardtext"\n\n[craft]\nname = "Plover"\nmass = 21 g\n',
    },
  });

  it('is accepted by a press and a reason, kept in a file beside the text, and taken back when its line goes', async () => {
    await editor().openFile('plover.boardtext');
    await editor().waitForSquiggles('warning');
    await editor().goTo(4, 18);
    await editor().takeFix(accept);
    const reason = editor().page.locator('.quick-input-widget:visible input[type=text]');
    await reason.fill('starts from a hook, all stand back');
    await editor().press('Enter');
    await editor().waitForNoSquiggles('warning');
    const accepted = () => editor().savedText('plover.boardtext.board.json');
    assert.match(accepted() ?? '', /"setting": \["tilt limit"\].*"reason": "starts from a hook, all/);
    assert.match(await editor().hoverOver('180'), /Accepted \(starts from a hook, all stand back\)/);

    await editor().goTo(4, 1);
    await editor().press('Control+Shift+K');
    await editor().waitForSquiggles('info');
    await editor().goTo(1, 1);
    await editor().takeFix('Remove the acceptance');
    await editor().waitUntil('the acceptance to be gone', async () => {
      return accepted()?.includes('tilt limit') === false;
    });
  });
});
