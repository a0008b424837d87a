import assert from 'node:assert/strict';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Scratch, withScratch } from '../support/scratch';
import { shellIn } from '../support/shell';

const right = '[arming]\ntilt-limit = 60 deg\n';
const wrong = '[arming]\ntilt-limt = 60 deg\n';

/** The samples of the page about the command line: the hook, then the job of CI. */
const samples = [
  ...readFileSync(resolve('schemas/COMMAND-LINE.md'), 'utf8').matchAll(/```sh\n(#!\/bin\/sh\n[\s\S]*?)```/g),
];
const [hook = '', job = ''] = samples.map(([, text = '']) => text);

/** A repository with that hook. */
function repository(scratch: Scratch) {
  const run = shellIn(scratch);
  scratch.write('.gitignore', '.bin\nreports\n');
  assert.equal(run('git init --quiet && git add . && git commit --quiet --message begin').status, 0);
  scratch.write('.git/hooks/pre-commit', hook);
  chmodSync(scratch.file('.git/hooks/pre-commit'), 0o755);
  const commit = () => run('git commit --quiet --message next');
  return { run, commit };
}

describe('the documents’ pre-commit hook', () => {
  it('lets a fine script in, and refuses one with something to fix', () =>
    withScratch({ 'a.craft': right }, async (scratch) => {
      const { run, commit } = repository(scratch);
      scratch.write('a.craft', `${right}# tried\n`);
      run('git add a.craft');
      assert.equal(commit().status, 0);
      scratch.write('a.craft', wrong);
      run('git add a.craft');
      const { status, stdout, stderr } = commit();
      assert.equal(status, 1);
      assert.match(stdout + stderr, /^a\.craft:2:1 must-fix line\/unknown-name/m);
    }));

  it('looks at what is committed, not at what lies in the folder', () =>
    withScratch({ 'a.craft': right }, async (scratch) => {
      const { run, commit } = repository(scratch);
      scratch.write('a.craft', wrong);
      run('git add a.craft');
      scratch.write('a.craft', right);
      assert.equal(commit().status, 1);
      run('git add a.craft');
      scratch.write('b.craft', right);
      run('git add b.craft');
      scratch.write('b.craft', wrong);
      assert.equal(commit().status, 0);
    }));

  it('looks at every script when an include or an addition changes, and at none when neither does', () =>
    withScratch({ 'a.craft': 'include "b.craft"\n[gyro]\nloud = on\n', 'b.craft': '' }, async (scratch) => {
      const { run, commit } = repository(scratch);
      scratch.write('notes.txt', 'windy');
      run('git add notes.txt');
      assert.equal(commit().status, 0);
      scratch.write('b.craft', right);
      run('git add b.craft');
      assert.match(commit().stderr + commit().stdout, /a\.craft:3:1 must-fix line\/unknown-name/);
    }));
});

describe('the documents’ job for CI', () => {
  const run = (files: Readonly<Record<string, string>>) =>
    withScratch({ ...files, 'job.sh': job }, async (scratch) => {
      const { status, stdout } = shellIn(scratch)('sh job.sh');
      assert.ok(existsSync(scratch.file('reports/propsoff.sarif')));
      const log = JSON.parse(readFileSync(scratch.file('reports/propsoff.sarif'), 'utf8'));
      return { status, stdout, results: log.runs[0].results.length };
    });

  it('passes where nothing is to fix', async () => {
    const { status, results } = await run({ 'a.craft': right });
    assert.deepEqual([status, results], [0, 0]);
  });

  it('fails for a fault and for an untidy script, and keeps the log', async () => {
    const faulty = await run({ 'fleet/a.craft': wrong });
    assert.deepEqual([faulty.status, faulty.results], [1, 1]);
    assert.match(faulty.stdout, /^fleet\/a\.craft:2:1 must-fix/m);
    const untidy = await run({ 'a.craft': right.replace(' = ', '=') });
    assert.equal(untidy.status, 1);
    assert.match(untidy.stdout, /^a\.craft would change$/m);
  });

  it('fails where nothing could be checked', async () => {
    const { status } = await withScratch({ 'job.sh': job }, async (scratch) => shellIn(scratch)('sh job.sh'));
    assert.equal(status, 2);
  });
});
