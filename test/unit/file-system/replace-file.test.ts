import assert from 'node:assert/strict';
import {
  appendFileSync,
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { rename } from 'node:fs/promises';
import { replaceFile } from '../../../server/src/file-system/replace-file';
import { asNobody, type Scratch, withScratch } from '../../support/scratch';

const before = 'rate=8 kHz\n';
const after = 'rate = 8 kHz\n';

/** A folder with one file; nothing but what is named may be in it afterwards. */
function withOne(
  run: (path: string, scratch: Scratch) => Promise<void>,
  names: readonly string[] = ['a.craft'],
) {
  return () =>
    withScratch({ 'a.craft': before }, async (scratch) => {
      await run(scratch.file('a.craft'), scratch);
      assert.deepEqual(readdirSync(scratch.path).sort(), names);
    });
}

describe('a file that is written', () => {
  it(
    'holds all of the new content and keeps its mode',
    withOne(async (path) => {
      chmodSync(path, 0o640);
      await replaceFile(path, before, after);
      assert.equal(readFileSync(path, 'utf8'), after);
      assert.equal(statSync(path).mode & 0o7777, 0o640);
    }),
  );

  it(
    'is what a link leads to, and the link stays one',
    withOne(
      async (path, scratch) => {
        symlinkSync('a.craft', scratch.file('link.craft'));
        await replaceFile(scratch.file('link.craft'), before, after);
        assert.ok(lstatSync(scratch.file('link.craft')).isSymbolicLink());
        assert.equal(readFileSync(path, 'utf8'), after);
      },
      ['a.craft', 'link.craft'],
    ),
  );

  it(
    'is left alone where it was changed since it was read',
    withOne(async (path) => {
      appendFileSync(path, 'more\n');
      await assert.rejects(replaceFile(path, before, after), /something else changed it meanwhile/);
      assert.equal(readFileSync(path, 'utf8'), `${before}more\n`);
    }),
  );

  it(
    'gets back what was added at the very moment of its writing',
    withOne(async (path) => {
      const addThenTake: typeof rename = async (from, to) => {
        appendFileSync(path, 'more\n');
        await rename(from, to);
      };
      await assert.rejects(
        replaceFile(path, before, after, addThenTake),
        /something else changed it meanwhile/,
      );
      assert.equal(readFileSync(path, 'utf8'), `${before}more\n`);
    }),
  );

  it('keeps both where lines were added before and after that moment, and says where', () =>
    withScratch({ 'a.craft': before }, async (scratch) => {
      const path = scratch.file('a.craft');
      const addAround: typeof rename = async (from, to) => {
        appendFileSync(path, 'early\n');
        await rename(from, to);
        appendFileSync(path, 'late\n');
      };
      const message = await replaceFile(path, before, after, addAround).then(
        () => '',
        (error: Error) => error.message,
      );
      const [, old = ''] = /which is in (.*)$/.exec(message) ?? [];
      assert.equal(readFileSync(old, 'utf8'), `${before}early\n`);
      assert.equal(readFileSync(path, 'utf8'), `${after}late\n`);
    }));

  it(
    'is as it was where the last step fails',
    withOne(async (path) => {
      const fail: typeof rename = async () => {
        throw new Error('no');
      };
      await assert.rejects(replaceFile(path, before, after, fail), /^Error: no$/);
      assert.equal(readFileSync(path, 'utf8'), before);
    }),
  );

  it(
    'needs no writing where it holds the content already',
    withOne(async (path) => {
      writeFileSync(path, after);
      const { ino } = statSync(path);
      await replaceFile(path, before, after);
      assert.equal(statSync(path).ino, ino);
    }),
  );

  it(
    'is refused where it has other names, which would keep the old content',
    withOne(
      async (path, scratch) => {
        linkSync(path, scratch.file('b.craft'));
        await assert.rejects(replaceFile(path, before, after), /one file with 2 names/);
        assert.equal(readFileSync(path, 'utf8'), before);
      },
      ['a.craft', 'b.craft'],
    ),
  );

  it(
    'is refused to who may not write it, or not into its folder',
    withOne(async (path, scratch) => {
      chmodSync(scratch.path, 0o777);
      chmodSync(path, 0o444);
      await asNobody(() => assert.rejects(replaceFile(path, before, after), /it may not be written/));
      chmodSync(path, 0o666);
      chmodSync(scratch.path, 0o555);
      await asNobody(() =>
        assert.rejects(replaceFile(path, before, after), /written into its folder|somebody else/),
      );
      chmodSync(scratch.path, 0o755);
      assert.equal(readFileSync(path, 'utf8'), before);
    }),
  );
});

describe('a file that is new', () => {
  it(
    'is written whole',
    withOne(
      async (_, scratch) => {
        await replaceFile(scratch.file('new.json'), null, after);
        assert.equal(scratch.read('new.json'), after);
        assert.equal(statSync(scratch.file('new.json')).nlink, 1);
      },
      ['a.craft', 'new.json'],
    ),
  );

  it(
    'never takes the place of one that came meanwhile, or of a link',
    withOne(
      async (path, scratch) => {
        await assert.rejects(replaceFile(path, null, after), /something else changed it meanwhile/);
        symlinkSync('nowhere', scratch.file('link'));
        await assert.rejects(replaceFile(scratch.file('link'), null, after), /meanwhile/);
        assert.equal(readFileSync(path, 'utf8'), before);
        assert.ok(!existsSync(scratch.file('nowhere')));
        renameSync(scratch.file('link'), scratch.file('a-link'));
      },
      ['a-link', 'a.craft'],
    ),
  );
});
