/**
 * Entry of the tests that run inside a browser's extension host. The editor calls `run` and ends when it
 * settles. What was found goes to the server that the page came from.
 */
import './mocha';
import './browser-recovery';
import '../suite/smoke.test';
import '../suite/additions.test';
import '../suite/faults.test';
import '../suite/features.test';
import '../suite/language.test';
import '../suite/new-craft-script.test';
import './browser-files';
import * as vscode from 'vscode';
import { countedRun } from '../suite/counts';

export async function run(): Promise<void> {
  const lines: string[] = [];
  const counts = await countedRun(
    (done) => mocha.run(done),
    (runner) => {
      runner.on('pass', (test) => lines.push(`  ✔ ${test.fullTitle()}`));
      runner.on('fail', (test, error) =>
        lines.push(`  FAILED ${test.fullTitle()}\n${error.stack ?? error.message}`),
      );
      runner.on('test end', () => void tell('report', lines.splice(0).join('\n')));
      runner.on('hook end', () => void tell('report', lines.splice(0).join('\n')));
    },
  );
  await tell('report', lines.join('\n'));
  await tell('counts', JSON.stringify(counts));
  if (counts.failed > 0 || counts.passed === 0)
    throw new Error(`${counts.passed} passed, ${counts.failed} failed`);
}

async function tell(path: string, body: string): Promise<void> {
  const extension = vscode.extensions.getExtension('propsoff.propsoff');
  const address = extension?.extensionUri.with({ path: `/${path}` }).toString(true) ?? '';
  if (body !== '') await fetch(address, { method: 'POST', body });
}
