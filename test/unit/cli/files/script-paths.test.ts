import assert from 'node:assert/strict';
import { chmodSync, symlinkSync } from 'node:fs';
import { filesAt } from '../../../../server/src/cli/files/script-paths';
import { asNobody, withScratch } from '../../../support/scratch';

describe('what a folder or a pattern leads to', () => {
  it('tells each folder below that may not be looked into, and finds the rest', () =>
    withScratch({ 'a.craft': '', 'shut/b.craft': '', 'open/c.craft': '' }, async (scratch) => {
      chmodSync(scratch.path, 0o755);
      chmodSync(scratch.file('shut'), 0o000);
      for (const path of [scratch.path, `${scratch.path}/**/*.craft`]) {
        const { files, unreadable } = await asNobody(() => filesAt(path, ['.craft']));
        assert.equal(files.length, 2, path);
        assert.equal(unreadable.length, 1, path);
        assert.match(unreadable[0] ?? '', /shut\/?: it may not be read$/);
      }
      chmodSync(scratch.file('shut'), 0o755);
    }));

  it('tells what is left out because it is a link, if its name is that of a script', () =>
    withScratch({ 'a.craft': '' }, async (scratch) => {
      for (const name of ['b.craft', 'notes.txt']) symlinkSync('a.craft', scratch.file(name));
      const found = await filesAt(scratch.path, ['.craft']);
      assert.deepEqual(found, {
        files: [scratch.file('a.craft')],
        unreadable: [],
        leftOut: [scratch.file('b.craft')],
      });
    }));

  it('tells a link that leads nowhere from a path where nothing is', () =>
    withScratch({}, async (scratch) => {
      symlinkSync('nowhere', scratch.file('link.craft'));
      const why = async (name: string) => (await filesAt(scratch.file(name), ['.craft'])).unreadable;
      assert.deepEqual(await why('link.craft'), [
        `${scratch.file('link.craft')}: it is a link that leads nowhere`,
      ]);
      assert.deepEqual(await why('none.craft'), [
        `${scratch.file('none.craft')}: there is no such file or folder`,
      ]);
    }));
});
