import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { copyForBoard as Copying } from '../../../client/src/copy-for-board';
import { freshWorld, world } from '../../support/stub-editor';

type Client = Parameters<typeof Copying>[0];

/** Checks that answer with a text of some length, in pieces. */
function clientWith(pieces: readonly string[], unchecked: string | null = null): Client {
  const answer = {
    kind: 'text',
    board: { name: 'wren', title: 'Wren' },
    pack: null,
    pieces,
    count: 3,
    unchecked,
    report: [],
    record: '{}\n',
  };
  const log = { info: () => undefined, show: () => undefined };
  return { request: async () => answer, log } as unknown as Client;
}

const line = 'set one thing to another\n';
const lines = (length: number) => line.repeat(Math.ceil(length / line.length));
const hash = (text: string | undefined) =>
  createHash('sha256')
    .update(text ?? '')
    .digest('hex');
const isDone = () => world.said.some((text) => text.startsWith('3 settings for Wren'));

describe('what is copied for a board', () => {
  let copyForBoard: typeof Copying;

  before(() => {
    // Only once the stub stands in for the editor.
    ({ copyForBoard } = require('../../../client/src/copy-for-board') as { copyForBoard: typeof Copying });
  });

  beforeEach(() => void freshWorld());

  it('is in the clipboard whole before it is said to be copied, and remembered beside the script (K01)', async () => {
    const text = lines(90_000);
    await copyForBoard(clientWith([text]));
    assert.equal(hash(world.clipboard), hash(text));
    assert.ok(isDone());
    assert.equal(world.files.get('/cfg/main.craft.handed.json'), '{}\n');
  });

  it('is said to be a part where it is one', async () => {
    await copyForBoard(clientWith([line], 'Read as a part.'));
    assert.equal(
      world.said.at(-1),
      '3 settings for Wren. Read as a part: what a whole craft needs was not checked. Propellers off before a pack is connected.',
    );
  });

  it('may have its line ends changed on the way, and nothing else', async () => {
    world.clipboardKeeps = (text) => text.replaceAll('\n', '\r\n');
    await copyForBoard(clientWith([line]));
    assert.ok(isDone());
  });

  for (const [title, keeps] of [
    ['cuts it short', (text: string) => text.slice(0, 64_096)],
    [
      'refuses it',
      () => {
        throw new Error('no clipboard here');
      },
    ],
    ['keeps what it had', () => 'something else'],
  ] satisfies [string, (text: string) => string][]) {
    it(`is not said to be copied where the clipboard ${title}, and nothing is remembered (K01)`, async () => {
      world.clipboardKeeps = keeps;
      await copyForBoard(clientWith([lines(90_000)]));
      assert.deepEqual(world.said, ['The clipboard does not hold what was copied. Nothing was handed over.']);
      assert.equal(world.files.size, 0);
    });
  }

  for (const length of [200_000, 5_000_000]) {
    it(`goes into a file whole where it is ${length} characters long (K01)`, async () => {
      world.saveAs = '/cfg/main.boardtext';
      const text = lines(length);
      await copyForBoard(clientWith([text]));
      assert.equal(hash(world.files.get('/cfg/main.boardtext')), hash(text));
      assert.equal(world.clipboard, '');
      assert.ok(isDone());
    });
  }

  it('is not said to be saved where the disk refuses it (K01)', async () => {
    Object.assign(world, { saveAs: '/cfg/main.boardtext', diskFault: 'the disk is full' });
    await copyForBoard(clientWith([lines(200_000)]));
    assert.deepEqual(world.said, ['main.boardtext could not be written: the disk is full']);
  });

  it('stays copied where only the record can’t be written, and that is said', async () => {
    world.diskFault = 'the disk is full';
    await copyForBoard(clientWith([line]));
    assert.match(world.said[0] ?? '', /could not be recorded beside the script: the disk is full/);
    assert.ok(isDone());
  });

  it('is nothing at all in a workspace that is not trusted', async () => {
    world.isTrusted = false;
    world.saveAs = '/cfg/main.boardtext';
    for (const text of [line, lines(200_000)]) await copyForBoard(clientWith([text]));
    assert.deepEqual([world.clipboard, world.files.size], ['', 0]);
    assert.match(world.said[0] ?? '', /not trusted: nothing is handed over/);
  });
});

describe('every place of the editor’s side that writes a file', () => {
  it('asks whether the workspace is trusted', () => {
    const folder = join(__dirname, '../../../client/src');
    const writers = readdirSync(folder).filter((name) =>
      /fs\.writeFile\(|from '\.\/(?:written|accept-beside)'/.test(readFileSync(join(folder, name), 'utf8')),
    );
    assert.deepEqual(writers, [
      'accept-beside.ts',
      'bench-card.ts',
      'board-choice.ts',
      'commands.ts',
      'copy-for-board.ts',
      'profile-file.ts',
      'record.ts',
      'recording-layout-file.ts',
      'use-as-board-text.ts',
      'written.ts',
    ]);
    for (const name of writers.filter((one) => one !== 'written.ts' && one !== 'commands.ts'))
      assert.match(readFileSync(join(folder, name), 'utf8'), /workspace\.isTrusted/, name);
  });
});
