import { strict as assert } from 'node:assert';
import { symlinkSync } from 'node:fs';
import { NodeFiles } from '../../../server/src/file-system/node-files';
import { type Scratch, withScratch } from '../../support/scratch';

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
  const found = await new NodeFiles(roots).scriptsAround(scratch.uriOf(path));
  return found.map((uri) => uri.slice(scratch.uri.length + 1)).sort();
}

describe('the scripts around one', () => {
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
      assert.deepEqual(await new NodeFiles([]).scriptsAround('untitled:Untitled-1'), []);
    }));

  it('are not looked for behind links, which may go round', () =>
    withScratch(files, async (scratch) => {
      symlinkSync(scratch.path, scratch.file('club/round'));
      assert.deepEqual(await around(scratch, [scratch.uri], 'a.craft'), all);
    }));
});
