import { strict as assert } from 'node:assert';
import { execSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packedExtension } from './made';
import { copyOfSource } from './source';

const root = join(__dirname, '../..');

/** Somebody else's machine, as far as variables can tell. */
const elsewhere = { TZ: 'Pacific/Auckland', LC_ALL: 'et_EE.UTF-8', SOURCE_DATE_EPOCH: '1' };

/** What the README tells to type: the command that makes the package, and the file that is installed then. */
function toldInReadme(): { readonly command: string; readonly file: string } {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const [, section = ''] =
    /## Install the packaged extension\n[\s\S]*?```sh\n([\s\S]*?)```/.exec(readme) ?? [];
  const [, command = ''] = /^(npm run package)\b/m.exec(section) ?? [];
  const [, file = ''] = /^code --install-extension (\S+)$/m.exec(section) ?? [];
  return { command, file };
}

describe('making the package again', () => {
  it('as the README tells gives the same bytes, in another folder, time zone and language, for another person', async () => {
    const first = await packedExtension();
    const copy = copyOfSource();
    const { command, file } = toldInReadme();
    const usual = process.umask(0o077);
    try {
      execSync(command, { cwd: copy, env: { ...process.env, ...elsewhere }, stdio: 'pipe' });
    } finally {
      process.umask(usual);
    }
    assert.ok(readFileSync(first).equals(readFileSync(join(copy, file))), 'the two packages differ');
  });
});
