import assert from 'node:assert/strict';
import { chmodSync, readdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { URI } from 'vscode-uri';
import { NodeFiles } from '../../../server/src/file-system/node-files';
import {
  readBytes,
  readBytesIfThere,
  readPiecesOf,
  textBeside,
  uriBeside,
} from '../../../server/src/file-system/read-file';
import { longestFile, pieceLength } from '../../../server/src/workspace/file-system';
import { asNobody, makeNamedPipe, withScratch } from '../../support/scratch';

const why = (path: string) =>
  readBytes(path).then(
    () => 'it was read',
    ({ message }: Error) => message,
  );

describe('a file on the disk', () => {
  it('is read whole, also through a link, and when the system makes it up', () =>
    withScratch({ 'a.craft': 'text' }, async (scratch) => {
      symlinkSync('a.craft', scratch.file('b.craft'));
      assert.equal((await readBytes(scratch.file('b.craft'))).toString(), 'text');
      if (process.platform === 'linux')
        assert.match((await readBytes('/proc/self/status')).toString(), /^Name:/);
    }));

  it('is not read where it is no file, and nothing waits for the other end of a pipe', () =>
    withScratch({ 'folder/a': '' }, async (scratch) => {
      symlinkSync('nowhere', scratch.file('broken'));
      symlinkSync('circle', scratch.file('circle'));
      symlinkSync('/dev/zero', scratch.file('endless'));
      makeNamedPipe(scratch.file('pipe'));
      const server = createServer().listen(scratch.file('socket'));
      await new Promise((resolve) => server.once('listening', resolve));
      const told = await Promise.all(
        ['missing', 'folder', 'broken', 'circle', 'endless', 'pipe', 'socket'].map((name) =>
          why(scratch.file(name)),
        ),
      );
      server.close();
      assert.deepEqual(told, [
        'there is no such file or folder',
        'it is a folder',
        'it is a link that leads nowhere',
        'its links lead in a circle',
        'it is a device, not a file',
        'it is a pipe, not a file',
        'it is a socket, not a file',
      ]);
    }));

  it('is not read where it is too long, to the byte', () =>
    withScratch({ most: '', more: '' }, async (scratch) => {
      truncateSync(scratch.file('most'), longestFile);
      truncateSync(scratch.file('more'), longestFile + 1);
      assert.equal((await readBytes(scratch.file('most'))).length, longestFile);
      assert.equal(await why(scratch.file('more')), 'it is longer than 10 MB');
    }));

  it('is read in pieces however long it is, and closed where nobody wants the rest', () =>
    withScratch({ long: '' }, async (scratch) => {
      const all = Buffer.alloc(2 * pieceLength + 3, 'abc');
      writeFileSync(scratch.file('long'), all);
      const { size, bytes } = await readPiecesOf(scratch.file('long'));
      const pieces: Uint8Array[] = [];
      for await (const piece of bytes()) pieces.push(piece);
      assert.equal(size, all.length);
      assert.deepEqual(
        pieces.map(({ length }) => length),
        [pieceLength, pieceLength, 3],
      );
      assert.ok(Buffer.concat(pieces).equals(all));
      const open = () => readdirSync('/proc/self/fd').length;
      if (process.platform !== 'linux') return;
      const before = open();
      for await (const piece of (await readPiecesOf(scratch.file('long'))).bytes()) {
        assert.equal(open(), before + 1);
        assert.ok(piece.length > 0);
        break;
      }
      assert.equal(open(), before);
      await assert.rejects(readPiecesOf(scratch.file('missing')), /there is no such file/);
    }));

  it('is not read by somebody who may not', () =>
    withScratch({ secret: 'text' }, async (scratch) => {
      chmodSync(scratch.path, 0o755);
      chmodSync(scratch.file('secret'), 0o000);
      assert.equal(await asNobody(() => why(scratch.file('secret'))), 'it may not be read');
    }));

  it('is told apart from none', () =>
    withScratch({ there: '' }, async (scratch) => {
      assert.equal(await readBytesIfThere(scratch.file('missing')), null);
      assert.equal((await readBytesIfThere(scratch.file('there')))?.length, 0);
      symlinkSync('nowhere', scratch.file('broken'));
      await assert.rejects(readBytesIfThere(scratch.file('broken')), /leads nowhere/);
    }));
});

describe('the files of a workspace', () => {
  it('are read by the same rules where a script includes them', () =>
    withScratch({ 'latin.craft': Buffer.from('é', 'latin1') }, async (scratch) => {
      makeNamedPipe(scratch.file('pipe.craft'));
      const files = new NodeFiles([scratch.uri]);
      const read = (name: string) => files.readText(scratch.uriOf(name));
      await assert.rejects(read('latin.craft'), /line 1 is not UTF-8/);
      await assert.rejects(read('pipe.craft'), /it is a pipe/);
      assert.equal(await read('missing.craft'), null);
      await assert.rejects(files.readText(URI.file(scratch.path).toString()), /it is a folder/);
    }));

  it('are told to be out of reach where a folder may not be looked into', () =>
    withScratch({ 'boards/a.json': '' }, async (scratch) => {
      const files = new NodeFiles([scratch.uri]);
      assert.deepEqual(await files.list(scratch.uriOf('missing')), []);
      chmodSync(scratch.path, 0o755);
      chmodSync(scratch.file('boards'), 0o000);
      await asNobody(() => assert.rejects(files.list(scratch.uriOf('boards')), /it may not be read/));
    }));
});

describe('a text that lies beside the program', () => {
  it('is read as it is, in whatever script', () =>
    withScratch({ 'text.json': '"50 Hz · Größe · 大きさ · 🛩"' }, async (scratch) =>
      assert.equal(textBeside('text.json', scratch.path), '"50 Hz · Größe · 大きさ · 🛩"'),
    ));

  it('has a URI where it is there', () =>
    withScratch({ 'checks.md': '' }, async (scratch) => {
      assert.equal(uriBeside('checks.md', scratch.path), scratch.uriOf('checks.md'));
      assert.equal(uriBeside('missing.md', scratch.path), null);
    }));

  it('is told to be missing, with its path and what to do', () =>
    withScratch({}, async (scratch) =>
      assert.throws(
        () => textBeside('missing.json', scratch.path),
        ({ message }: Error) =>
          message.includes(scratch.file('missing.json')) && message.includes('install propsoff'),
      ),
    ));
});
