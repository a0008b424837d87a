import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { cpSync, readFileSync, symlinkSync } from 'node:fs';
import { basename, join } from 'node:path';
import { scratchFolder } from '../workbench/launch.mjs';
import { packedExtension } from './made';

const root = join(__dirname, '../..');
const modules = ['node_modules', join('test', 'workbench', 'packager', 'node_modules')];
const notSource = new Set(['node_modules', '.git', 'dist']);

/** The source in another folder, with the packages that are already installed. */
function copyOfSource(): string {
  const copy = join(scratchFolder('elsewhere'), 'a checkout');
  cpSync(root, copy, { recursive: true, filter: (path) => !notSource.has(basename(path)) });
  for (const folder of modules) symlinkSync(join(root, folder), join(copy, folder), 'junction');
  return copy;
}

describe('making the package again', () => {
  it('gives the same bytes in another folder, time zone and language, for another person', async () => {
    const first = await packedExtension();
    const copy = copyOfSource();
    const second = join(copy, 'again.vsix');
    const { umask } = process;
    const before = umask(0o077);
    try {
      execFileSync(process.execPath, [join(copy, 'test', 'workbench', 'package.mjs'), '--out', second], {
        env: { ...process.env, TZ: 'Pacific/Auckland', LC_ALL: 'et_EE.UTF-8', SOURCE_DATE_EPOCH: '1' },
        stdio: 'pipe',
      });
    } finally {
      umask(before);
    }
    assert.ok(readFileSync(first).equals(readFileSync(second)), 'the two packages differ');
  });
});
