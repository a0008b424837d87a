import { strict as assert } from 'node:assert';
import { chmodSync, symlinkSync } from 'node:fs';
import { NodeFiles } from '../../../server/src/file-system/node-files';
import { asNobody, type Scratch, withScratch } from '../../support/scratch';

const files = {
  'a.craft': '',
  'a.txt': '',
  'club/b c.craft': '',
  'club/deep/d.craft': '',
  'node_modules/e.craft': '',
  '.kept/f.craft': '',
};
const all = ['a.craft', 'club/b%20c.craft', 'club/deep/d.craft'];
const inClub = all.slice(1);

async function around(scratch: Scratch, roots: readonly string[], path: string): Promise<readonly string[]> {
  const files = new NodeFiles(roots);
  const found = await Promise.all(
    files.foldersOf(scratch.uriOf(path)).map((folder) => files.scriptsBelow(folder)),
  );
  assert.ok(found.every(({ unread, isCut }) => unread.length === 0 && !isCut));
  return found
    .flatMap(({ scripts }) => scripts)
    .map((uri) => uri.slice(scratch.uri.length + 1))
    .sort();
}

describe('the scripts around one', () => {
  it('are told to be some where a folder can’t be looked into, with why', () =>
    withScratch(files, async (scratch) => {
      chmodSync(scratch.path, 0o755);
      chmodSync(scratch.file('club'), 0o000);
      const { scripts, unread } = await asNobody(() => new NodeFiles([]).scriptsBelow(scratch.uri));
      chmodSync(scratch.file('club'), 0o700);
      assert.deepEqual(scripts, [scratch.uriOf('a.craft')]);
      assert.deepEqual(unread, [{ uri: scratch.uriOf('club'), why: 'it may not be read' }]);
    }));

  it('are those below the workspace’s folder, but for hidden folders and packages', () =>
    withScratch(files, async (scratch) =>
      assert.deepEqual(await around(scratch, [scratch.uri], 'club/deep/d.craft'), all),
    ));

  it('are those below its own folder where no folder holds it', () =>
    withScratch(files, async (scratch) =>
      assert.deepEqual(await around(scratch, [], 'club/x.craft'), inClub),
    ));

  it('are none where there is no such folder, or the script is no file', () =>
    withScratch(files, async (scratch) => {
      assert.deepEqual(await around(scratch, [], 'gone/x.craft'), []);
      assert.deepEqual(new NodeFiles([]).foldersOf('untitled:Untitled-1'), []);
    }));

  it('are not looked for behind links, which may go round', () =>
    withScratch(files, async (scratch) => {
      symlinkSync(scratch.path, scratch.file('club/round'));
      assert.deepEqual(await around(scratch, [scratch.uri], 'a.craft'), all);
    }));
});
