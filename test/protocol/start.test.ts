import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { built } from '../support/built';
import { withScratch } from '../support/scratch';

/** Runs a program and names the files of code that it has loaded when it ends. */
const noting = `process.on('exit', () => require('fs').writeSync(2, JSON.stringify(Object.keys(require.cache))));
  require(process.argv[1]);`;

function loadedBy(program: string, args: readonly string[], cwd: string): readonly string[] {
  const { stderr } = spawnSync(process.execPath, ['-e', noting, built(program), ...args], {
    cwd,
    input: '',
    encoding: 'utf8',
  });
  return JSON.parse(stderr.slice(stderr.lastIndexOf('['))) as string[];
}

/** What the models of data are written with: only what others wrote is held against them, and few wrote any. */
const models = 'ZodMiniObject';

/** What reading a board's text says of one that is cut off, and a kind of token of the library that knows YAML. */
const [listings, yaml] = ['The document ends before it is closed.', 'byte-order-mark'];

/** What is said of a recording in which nothing can be told. */
const recordings = 'No two rows of this flight follow each other in time.';

describe('what a start loads', () => {
  for (const [program, ...args] of [
    ['server.js', '--stdio'],
    ['propsoff.js', 'check', 'a.craft'],
  ] as const) {
    it(`leaves the models of the data aside: ${[program, ...args].join(' ')}`, () =>
      withScratch({ 'a.craft': '[gyro]\nrate = 3 kHz\n' }, async ({ path }) => {
        const loaded = loadedBy(program, args, path);
        assert.ok(loaded.length > 1, loaded.join('\n'));
        assert.deepEqual(
          loaded.filter((file) => readFileSync(file, 'utf8').includes(models)),
          [],
        );
      }));
  }

  it('leaves what reads recordings aside, until one is read', () =>
    withScratch({ 'a.craft': '[gyro]\nrate = 3 kHz\n', 'a.csv': 'time,gyro x\n0,1\n' }, async ({ path }) => {
      for (const [program, args, isRead] of [
        ['server.js', ['--stdio'], false],
        ['propsoff.js', ['check', 'a.craft'], false],
        ['propsoff.js', ['sheet', 'a.craft'], false],
        ['propsoff.js', ['find', 'a.craft'], false],
        ['propsoff.js', ['recording', 'a.csv'], true],
      ] as const) {
        const texts = loadedBy(program, args, path).map((file) => readFileSync(file, 'utf8'));
        assert.equal(
          texts.some((text) => text.includes(recordings)),
          isRead,
          args.join(' '),
        );
      }
    }));

  it('reads them for a file that adds to the catalogue', () =>
    withScratch({ 'a.craft': '[gyro]\n', 'propsoff/club.json': '{}' }, async ({ path }) => {
      const loaded = loadedBy('propsoff.js', ['check', 'a.craft'], path);
      assert.ok(loaded.some((file) => readFileSync(file, 'utf8').includes(models)));
    }));

  it("reads what understands boards' texts with the first of them, and what takes YAML apart with the first YAML", () => {
    const files = {
      'a.craft': '[gyro]\nrate = 3 kHz\n',
      'lines.boardtext': 'spool = 4\nhum = 20\n',
      'marked.boardtext': '---\nspool: 4\nhum:\n  - 20\n  - 30\n',
    };
    return withScratch(files, async ({ path }) => {
      for (const [file, ...expected] of [
        ['a.craft', false, false],
        ['lines.boardtext', true, false],
        ['marked.boardtext', true, true],
      ] as const) {
        const texts = loadedBy('propsoff.js', ['check', file], path).map((one) => readFileSync(one, 'utf8'));
        const has = (sign: string) => texts.some((text) => text.includes(sign));
        assert.deepEqual([has(listings), has(yaml)], expected, file);
      }
      const texts = loadedBy('server.js', ['--stdio'], path).map((one) => readFileSync(one, 'utf8'));
      assert.deepEqual(
        texts.filter((text) => text.includes(listings) || text.includes(yaml)),
        [],
      );
    });
  });
});
