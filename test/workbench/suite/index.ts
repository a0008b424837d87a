/**
 * Entry of the tests that run inside the extension host. The editor calls `run` and ends when it settles.
 * The report and the counts go to files, since an extension host's own output is not the terminal's.
 */
import { appendFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'node:util';
import { type Counts, countedRun } from './counts';

/** Runs every test file beside this one; rejects if a test failed or none ran. */
export async function run(): Promise<void> {
  process.setSourceMapsEnabled(true);
  const { default: Mocha } = await import('mocha');
  const { PROPSOFF_REPORT: report, PROPSOFF_COUNTS: countsPath } = process.env;
  if (report !== undefined) {
    Mocha.reporters.Base.consoleLog = (...words: unknown[]) =>
      appendFileSync(report, `${format(...words)}\n`);
  }
  const mocha = new Mocha({
    ui: 'bdd',
    reporter: 'spec',
    timeout: 60_000,
    forbidOnly: true,
    forbidPending: true,
    // A tab's closing is told late on a busy machine: the findings of a new script that took its name are dropped then.
    retries: 1,
  });
  for (const name of readdirSync(__dirname).sort()) {
    if (name.endsWith('.test.js')) mocha.addFile(join(__dirname, name));
  }
  const counts = await countRun(mocha, report);
  if (countsPath !== undefined) writeFileSync(countsPath, JSON.stringify(counts));
  if (counts.failed > 0 || counts.passed === 0) {
    throw new Error(`${counts.passed} passed, ${counts.failed} failed`);
  }
}

/** A test file that cannot be loaded counts as one failed test, with its reason in the report. */
async function countRun(mocha: Mocha, report: string | undefined): Promise<Counts> {
  try {
    await mocha.loadFilesAsync();
  } catch (error) {
    const title = 'a test file cannot be loaded';
    if (report !== undefined) appendFileSync(report, `${title}: ${format(error)}\n`);
    return { passed: 0, failed: 1, failedTests: [{ title, reason: format(error) }], triedTwice: [] };
  }
  return countedRun((done) => mocha.run(done));
}
