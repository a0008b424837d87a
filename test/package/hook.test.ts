import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { copyOfSource } from './source';

describe('the hook before a commit', () => {
  let folder = '';

  /** Runs git in the copy as somebody who has no settings of their own. */
  function git(...args: readonly string[]): { readonly code: number | null; readonly words: string } {
    const who = ['-c', 'user.name=Anyone', '-c', 'user.email=anyone@example.org'];
    const env = { ...process.env, GIT_CONFIG_GLOBAL: join(folder, 'none'), GIT_CONFIG_NOSYSTEM: '1' };
    const { status, stdout, stderr } = spawnSync('git', [...who, ...args], { cwd: folder, env });
    return { code: status, words: `${stdout}${stderr}` };
  }

  before(() => {
    folder = copyOfSource();
    git('init', '--quiet');
    git('config', 'core.hooksPath', '.githooks');
  });

  function commit(text: string): { readonly code: number | null; readonly words: string } {
    writeFileSync(join(folder, 'server', 'src', 'new-file.ts'), text);
    git('add', 'server/src/new-file.ts');
    return git('commit', '--message', 'Try the hook');
  }

  it('stops what is not formatted', () => {
    const { code, words } = commit('export const one = "1"\n');
    assert.notEqual(code, 0);
    assert.match(words, /new-file\.ts/);
  });

  it('stops what the types refuse', () => {
    const { code, words } = commit("export const one: number = '1';\n");
    assert.notEqual(code, 0);
    assert.match(words, /TS2322/);
  });

  it('lets through what is well', () => {
    const { code, words } = commit("export const one = '1';\n");
    assert.equal(code, 0, words);
  });
});
