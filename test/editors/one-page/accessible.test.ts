import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { at, frame, menu, onePage, sheet, sizes, write } from './driver';

async function accessFaults(page: Page): Promise<string[]> {
  const axe = readFileSync(require.resolve('axe-core'), 'utf8');
  for (const one of page.frames()) await one.evaluate(axe);
  // The whole report is a megabyte about what is right.
  const violations = await page.evaluate<AxeResults['violations']>(
    "axe.run({ resultTypes: ['violations'] }).then((report) => report.violations)",
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
  );
}

describe('the page without an install', () => {
  const { open } = onePage();

  for (const colorScheme of ['light', 'dark'] as const)
    for (const { on, options } of sizes)
      it(`keeps nobody out: axe finds nothing on ${on} in the ${colorScheme} theme`, async () => {
        const page = await open({ ...options, colorScheme });
        await write(page, '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n');
        await at(page, 'Findings');
        await page.locator('#findings .must-fix').first().waitFor();
        const faults = await accessFaults(page);
        await page.locator('#more').click();
        faults.push(...(await accessFaults(page)));
        await page.keyboard.press('Escape');
        await at(page, 'Build sheet');
        await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
        await menu(page, 'Open Bench Card');
        await frame(page, 'Bench Card')
          .getByRole('heading', { name: /Linnet/ })
          .waitFor();
        faults.push(...(await accessFaults(page)));
        await page.getByRole('tab', { name: 'Bench Card' }).press('Delete');
        await page.getByRole('tab', { name: 'Bench Card' }).waitFor({ state: 'detached' });
        assert.deepEqual(faults, []);
      });
});
