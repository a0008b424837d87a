import { strict as assert } from 'node:assert';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const root = join(__dirname, '..', '..', '..');

/**
 * What only the server reckons with: a page that brings it along is ten times as large as what it draws. Which paths a
 * pattern means is no reckoning: the page that keeps files itself is asked by patterns.
 */
const engine = /^server\/src\/(craft|physics|query|workspace(?!\/path-patterns\.ts)|catalog|figures)\//;

/** The files that end up in a page's script. */
async function filesOf(page: string): Promise<readonly string[]> {
  const entry = join('client', page, 'main.ts');
  const bundled = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    metafile: true,
    write: false,
    outdir: 'dist',
    external: ['vscode'],
  });
  return Object.values(bundled.metafile.outputs).flatMap(({ inputs }) =>
    Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : [])),
  );
}

describe('the scripts of the pages', () => {
  const pages = readdirSync(join(root, 'client'), { recursive: true, encoding: 'utf8' })
    .filter((file) => /^[^/\\]+[/\\]main\.ts$/.test(file))
    .map((file) => file.split(/[/\\]/)[0] ?? '');

  it('are there', () => assert.ok(pages.length >= 4, pages.join(', ')));

  for (const page of pages)
    it(`draw, and leave the reckoning to the server: ${page}`, async () => {
      const files = await filesOf(page);
      assert.ok(files.length > 1, files.join('\n'));
      assert.deepEqual(
        files.filter((file) => engine.test(file)),
        [],
      );
    });
});
