import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { propsoff } from '../support/command-line';

/** What bash would offer for the last of these words. */
function offered(...words: readonly string[]): readonly string[] {
  const script = `${propsoff(['completions', 'bash']).stdout}
COMP_WORDS=("$@")
COMP_CWORD=$(($# - 1))
_propsoff
printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', script, 'bash', ...words], { encoding: 'utf8' });
  assert.equal(stderr, '');
  return stdout.split('\n').filter((word) => word !== '');
}

describe('completions in a shell', () => {
  it('are the commands, then options, the words that an option takes, and files', () => {
    assert.deepEqual(offered('propsoff', 'che'), ['check']);
    assert.deepEqual(offered('propsoff', 'help', 'pro'), ['prove']);
    assert.deepEqual(offered('propsoff', 'check', '--fa'), ['--fail-on']);
    assert.deepEqual(offered('propsoff', 'check', '--fail-on', ''), [
      'must-fix',
      'risk',
      'note',
      'tidy',
      'never',
    ]);
    assert.deepEqual(offered('propsoff', 'format', '--color', 'al'), ['always']);
    assert.deepEqual(offered('propsoff', 'check', 'package.j'), ['package.json']);
  });

  for (const shell of ['bash', 'fish', 'zsh']) {
    it(`name every option of every command for ${shell}`, () => {
      const { status, stdout } = propsoff(['completions', shell]);
      assert.equal(status, 0);
      for (const [, name = ''] of propsoff(['--help']).stdout.matchAll(/^ {2}([a-z-]+) {2,}\S/gm)) {
        assert.ok(new RegExp(`\\b${name}\\b`).test(stdout), name);
        for (const [, option = ''] of propsoff([name, '--help']).stdout.matchAll(/^ {2}--([a-zA-Z-]+)/gm))
          assert.ok(
            stdout.includes(shell === 'fish' ? `-l ${option} ` : `--${option}`),
            `${name} --${option}`,
          );
      }
    });
  }

  it('are refused for another shell, naming those that there are', () => {
    const { status, stderr } = propsoff(['completions', 'tcsh']);
    assert.deepEqual([status, stderr.trim()], [2, 'propsoff: completions takes one shell: bash, fish, zsh']);
  });
});
