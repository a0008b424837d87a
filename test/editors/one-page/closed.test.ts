import { strict as assert } from 'node:assert';
import { desk, line, menu, onePage, sheet, write } from './driver';

describe('the page without an install, as far as others go', () => {
  const { open, faultsTaken } = onePage();

  it('lets nothing be asked of anybody, and no other script run', async () => {
    const page = await open(desk);
    const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    const rules = new Map((policy ?? '').split('; ').map((rule) => [rule.split(' ')[0], rule]));
    assert.equal(rules.get('default-src'), "default-src 'none'");
    assert.match(rules.get('script-src') ?? '', /^script-src( 'sha256-[\w+/]+=*')+$/);
    assert.equal(rules.get('connect-src'), undefined, 'nothing lifts the rule for connections');
    const outcome = await page.evaluate("fetch('https://example.org/').then(() => false, () => true)");
    assert.equal(outcome, true);
    const faults = faultsTaken();
    assert.ok(faults.length > 0);
    for (const fault of faults) assert.match(fault, /Content Security Policy/);
  });

  it('shows what a hostile script holds as text, wherever it is shown', async () => {
    const page = await open(desk);
    const markup = '<img src=x>';
    await write(page, `[craft]\nname = "${markup}"\nmass = 300 g # ${markup}\n`);
    await sheet(page).getByRole('heading', { name: markup }).waitFor();
    await line(page, 'mass').hover({ position: { x: 20, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('craft.mass').first().waitFor();
    await line(page, 'name =').click();
    await menu(page, 'Explain This Line');
    await page.locator('.read-only').getByText(markup).first().waitFor();
    for (const one of page.frames()) assert.equal(await one.locator('img').count(), 0);
  });
});
