import { strict as assert } from 'node:assert';
import { desk, frame, kept, menu, onePage, openFile, pasteBoardText, phone, write } from './driver';

/** Run in the page: the server hears nothing until it is let. */
const slowServer = `(() => {
  const { postMessage } = Worker.prototype;
  const held = [];
  Worker.prototype.postMessage = function (...message) { held.push([this, message]); };
  window.letServerHear = () => {
    Worker.prototype.postMessage = postMessage;
    for (const [worker, message] of held) worker.postMessage(...message);
  };
})()`;

describe('a board’s text on the page without an install', () => {
  const { open } = onePage();

  it('takes a board’s listing, says what it means, hands it over and proves it', async () => {
    const page = await open(desk);
    const listing = 'idle_power = 55\ntilt_limit = 25\ngyro_lowpass = 120\nfailsafe = hold\n';
    await pasteBoardText(page, listing);
    await page
      .locator('.toast')
      .getByText(/4 settings .* were found/)
      .waitFor();
    assert.equal(await page.locator('#script-name').innerText(), 'board.boardtext');

    await menu(page, 'Say What Settings Mean');
    const meanings = frame(page, 'What Settings Mean');
    await meanings.locator('.counts').getByText('0 of 4 said').waitFor();
    await meanings.getByRole('button', { name: /deg:/ }).first().click();
    await meanings.locator('.counts').getByText('1 of 4 said').waitFor();
    assert.match(await kept(page), /boards\/board\.json/);

    await write(page, listing.replace('= 25', '= 30'));
    await menu(page, 'Copy Text for the Board');
    await page.locator('.toast').getByText('settings for board', { exact: false }).waitFor();
    const handed = await page.evaluate<string>('navigator.clipboard.readText()');
    assert.match(handed, /^tilt_limit = 30$/m);

    // What the board prints once it has taken it; and then a board that has not.
    await menu(page, 'Compare with Captured Text', 'From the Clipboard');
    await page
      .locator('.read-only')
      .getByText(/4 of 4|all 4|hold/i)
      .first()
      .waitFor();
    await page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(listing)})`);
    await menu(page, 'Compare with Captured Text', 'From the Clipboard');
    await page.locator('.read-only').getByText('tilt_limit').first().waitFor();
  });

  it('says of sentences that no line of them looks like a setting, and no more once another text is opened', async () => {
    const page = await open(phone);
    await pasteBoardText(
      page,
      'I flew in the park and it was windy.\nThe left motor is rough, so I will change it.\n',
    );
    const said = page.locator('.toast').getByText('No line of this text looks like a setting.');
    await said.waitFor();
    assert.doesNotMatch(await kept(page), /boardtext/);
    await openFile(page, 'linnet.craft', '[craft]\nname = "Linnet"\n');
    await said.waitFor({ state: 'detached' });
  });

  it('waits for checks that have yet to start, and does not take their silence for an answer', async () => {
    const page = await open(desk, { prepare: (context) => context.addInitScript(slowServer) });
    await pasteBoardText(page, 'idle_power = 55\ntilt_limit = 25\n');
    await page.locator('#editor').getByText('tilt_limit').waitFor();
    await page.evaluate('letServerHear()');
    await page.locator('.toast').getByText('2 settings').waitFor();
  });
});
