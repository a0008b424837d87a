// Runs the tests of the suite that need nothing but an editor inside a browser's own extension host.
import { rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closeBrowser, openBrowser } from '../launch.mjs';
import { PlainError, reportAndFail, root } from '../machine.mjs';
import { bench, bundleForBrowser, serveWebWorkbench } from './server.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const longestRun = 5 * 60_000;

async function bundleSuite() {
  await bundleForBrowser(join(here, 'suite.ts'), join(bench, 'suite.js'), {
    alias: { 'node:assert': join(here, 'assert.ts') },
    inject: [join(here, 'process.ts')],
    define: { global: 'globalThis' },
    // One of the libraries takes `module.exports` for itself, so ours are put there last.
    format: 'iife',
    globalName: 'suite',
    footer: { js: 'module.exports = suite;' },
    sourcemap: 'inline',
  });
}

/** The workbench calls codeAutomationExit in the page once the suite in the extension host has ended. */
async function runSuite(origin, context) {
  const page = await context.newPage();
  if (process.env.PROPSOFF_SHOW === '1') page.on('console', (message) => console.log(message.text()));
  const code = new Promise((settle, fail) => {
    page.exposeFunction('codeAutomationLog', () => undefined).catch(fail);
    page.exposeFunction('codeAutomationExit', settle).catch(fail);
    page.once('crash', () => fail(new Error('the page crashed')));
    setTimeout(() => fail(new Error('the tests did not end in time')), longestRun).unref();
  });
  await page.goto(`${origin}?suite`);
  return code;
}

async function main() {
  rmSync(bench, { recursive: true, force: true });
  await bundleSuite();
  let counts;
  const onReport = (path, body) => {
    if (path === '/counts') counts = JSON.parse(body);
    else console.log(body);
  };
  const server = await serveWebWorkbench({ workspace: join(root, 'test', 'demo'), onReport });
  const context = await openBrowser();
  try {
    const code = await runSuite(server.origin, context);
    if (counts === undefined) throw new PlainError(`the suite in the browser gave no result (${code})`);
    if (code !== 0 && counts.failed === 0) {
      counts.failed = 1;
      counts.failedTests = [{ title: 'the end of the editor', reason: `exit code ${code}` }];
    }
  } finally {
    await closeBrowser(context);
    await server.stop();
  }
  if (process.env.PROPSOFF_COUNTS) writeFileSync(process.env.PROPSOFF_COUNTS, JSON.stringify(counts));
  process.exitCode = counts.failed > 0 || counts.passed === 0 ? 1 : 0;
}

main().catch(reportAndFail);
