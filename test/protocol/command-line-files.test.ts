import assert from 'node:assert/strict';
import { readdirSync, readFileSync, symlinkSync, truncateSync } from 'node:fs';
import { propsoff } from '../support/command-line';
import { makeNamedPipe, withScratch } from '../support/scratch';
import { shellIn } from '../support/shell';

const untidy = '[gyro]\nrate=8 kHz\n';
const tidy = '[gyro]\nrate = 8 kHz\n';
const craft = '[craft]\nname = "Whinchat"\n[board]\nprofile = wren\n';

describe('a script that is formatted', () => {
  it('stays whole where the disk holds no more, and that is told in one line', () =>
    withScratch(
      { 'a.craft': untidy, 'long.craft': `${untidy}${'# note\n'.repeat(2000)}` },
      async (scratch) => {
        const before = scratch.read('long.craft');
        // The most that a file may grow to stands in for the end of the disk.
        const { status, stderr, stdout } = shellIn(scratch)('ulimit -f 2; propsoff format');
        assert.equal(status, 2);
        assert.equal(stdout, 'a.craft formatted\n');
        assert.equal(stderr, 'propsoff: long.craft was left as it was: files may not be that long here\n');
        assert.equal(scratch.read('long.craft'), before);
        assert.deepEqual(readdirSync(scratch.path).sort(), ['.bin', 'a.craft', 'long.craft']);
      },
    ));

  it('may be named twice, once by a link', () =>
    withScratch({ 'a.craft': untidy }, async (scratch) => {
      symlinkSync('a.craft', scratch.file('b.craft'));
      const { status, stderr } = propsoff(['format', 'a.craft', 'b.craft'], { cwd: scratch.path });
      assert.deepEqual([status, stderr], [0, '']);
      assert.equal(scratch.read('a.craft'), tidy);
    }));

  it('is left as it is in Latin-1, which is told with the line', () =>
    withScratch({ 'a.craft': Buffer.from(`${untidy}# é\n`, 'latin1') }, async (scratch) => {
      const before = readFileSync(scratch.file('a.craft'));
      const { status, stderr } = propsoff(['format', 'a.craft'], { cwd: scratch.path });
      assert.equal(status, 2);
      assert.equal(
        stderr,
        'propsoff: a.craft: line 3 is not UTF-8 (is it Latin-1?): save the file as UTF-8\n',
      );
      assert.deepEqual(readFileSync(scratch.file('a.craft')), before);
    }));
});

describe('what is no file of a fair size', () => {
  const commands = ['check', 'format', 'sheet', 'bench-card', 'board-text', 'read', 'learn'];
  for (const command of commands) {
    it(`is refused by ${command} with one line and 2`, () =>
      withScratch({ 'folder/x': '', 'long.craft': '' }, async (scratch) => {
        truncateSync(scratch.file('long.craft'), 10_000_001);
        symlinkSync('/dev/zero', scratch.file('endless.craft'));
        makeNamedPipe(scratch.file('pipe.craft'));
        const cases = [
          ['long.craft', 'it is longer than 10 MB'],
          ['endless.craft', 'it is a device, not a file'],
          ['pipe.craft', 'it is a pipe, not a file'],
        ] as const;
        for (const [name, why] of cases) {
          const { status, stderr, stdout } = propsoff([command, name], { cwd: scratch.path });
          assert.deepEqual([status, stderr, stdout], [2, `propsoff: ${name}: ${why}\n`, '']);
        }
      }));
  }

  it('is refused from standard input as well', () => {
    const input = 'x\n'.repeat(5_000_001);
    for (const command of ['check', 'read']) {
      const { status, stderr } = propsoff([command, '-'], { input });
      assert.deepEqual([status, stderr], [2, 'propsoff: standard input: it is longer than 10 MB\n']);
    }
  });

  it('is refused where standard input is a folder', () =>
    withScratch({ 'a.craft': craft }, async (scratch) => {
      for (const command of ['check', 'read', 'format']) {
        const { status, stderr } = shellIn(scratch)(`propsoff ${command} - < .`);
        assert.deepEqual([status, stderr], [2, 'propsoff: standard input: it is a folder\n']);
      }
    }));

  it('is told where a script includes it', () =>
    withScratch({ 'a.craft': 'include "pipe.craft"\ninclude "latin.craft"\n' }, async (scratch) => {
      makeNamedPipe(scratch.file('pipe.craft'));
      scratch.write('latin.craft', Buffer.from('# é\n', 'latin1'));
      const { stdout, status } = propsoff(['check', 'a.craft'], { cwd: scratch.path });
      assert.equal(status, 1);
      assert.match(stdout, /^a\.craft:1:9 must-fix line\/include-refused .*it is a pipe, not a file/m);
      assert.match(stdout, /^a\.craft:2:9 must-fix line\/include-refused .*line 1 is not UTF-8/m);
    }));
});

describe('names of files that a terminal would obey', () => {
  const name = 'a\u001b[2J\nb.craft:1:1 must-fix\u202e.craft';
  const files = { [name]: untidy, 'sub/x': '' };
  const isClean = (text: string) =>
    !text.includes('\u001b') && !text.includes('\u202e') && !/^b\.craft/m.test(text);

  it('forge no line in what is told to people', () =>
    withScratch(files, async ({ path: cwd }) => {
      const wrong = `include "${'x'.repeat(3)}.craft"\n[arming]\ntilt-limt = 60 deg\n`;
      for (const args of [
        ['check'],
        ['check', name],
        ['check', '-', '--name', name],
        ['check', `no ${name}`],
        ['check', '--pack', name],
        ['check', `--${name}`],
        ['check', '--board', name],
        ['format', '--check'],
        ['format'],
        ['sheet', name],
        ['compare', name, name],
        ['explain', name],
        ['bench-card', name],
        ['board-text', name],
        ['prove', name, name],
        ['read', name],
        ['learn', name, '--confirm', name],
        [name],
        ['help', name],
      ]) {
        const { stdout, stderr } = propsoff(args, { cwd, input: args.includes('-') ? wrong : '' });
        assert.ok(isClean(stdout), `${args.join(' ')} printed ${JSON.stringify(stdout)}`);
        assert.ok(isClean(stderr), `${args.join(' ')} told ${JSON.stringify(stderr)}`);
        assert.ok(`${stdout}${stderr}`.trim() !== '', `${args.join(' ')} said nothing`);
      }
    }));

  it('are the same in JSON, and right URIs in SARIF', () =>
    withScratch({ [name]: '[arming]\ntilt-limt = 60 deg\n' }, async ({ path: cwd }) => {
      const json = propsoff(['check', '--json'], { cwd }).stdout;
      assert.ok(isClean(json));
      assert.equal(JSON.parse(json).files[0].path, name);
      const log = propsoff(['check', '--sarif'], { cwd }).stdout;
      assert.ok(isClean(log));
      const [result] = JSON.parse(log).runs[0].results;
      assert.equal(result.locations[0].physicalLocation.artifactLocation.uri, encodeURIComponent(name));
    }));
});

describe('the record of a hand-over', () => {
  const handed = 'a.craft.handed.json';
  const run = (cwd: string) =>
    propsoff(['board-text', 'a.craft', '--record', '--despite', 'a test'], { cwd });

  it('takes the place of the last one', () =>
    withScratch({ 'a.craft': craft }, async (scratch) => {
      assert.equal(run(scratch.path).status, 0);
      scratch.write('a.craft', `${craft}[gyro]\nrate = 8 kHz\n`);
      assert.equal(run(scratch.path).status, 0);
      assert.match(scratch.read(handed), /"board": "wren"/);
      assert.deepEqual(readdirSync(scratch.path).sort(), ['a.craft', handed]);
    }));

  it('is not written over what is none, and no text goes out then', () =>
    withScratch({ 'a.craft': craft, [handed]: 'my notes' }, async (scratch) => {
      const { status, stderr, stdout } = run(scratch.path);
      assert.deepEqual([status, stdout], [2, '']);
      assert.equal(
        stderr,
        `propsoff: ${handed} is no record of a hand-over: move it away, or leave --record out\n`,
      );
      assert.equal(scratch.read(handed), 'my notes');
    }));

  it('is told to be unreadable, and not to be missing', () =>
    withScratch({ 'a.craft': craft, [`${handed}/x`]: '' }, async ({ path: cwd }) => {
      const { status, stderr } = propsoff(['board-text', 'a.craft', '--changed'], { cwd });
      assert.deepEqual([status, stderr], [2, `propsoff: ${handed}: it is a folder\n`]);
    }));

  it('is not made where the text could not be written', () =>
    withScratch({ 'a.craft': craft }, async (scratch) => {
      const { status, stderr } = shellIn(scratch)(
        'propsoff board-text a.craft --record --despite "a test" > /dev/full',
      );
      assert.deepEqual([status, stderr], [2, 'propsoff: the output was cut off: the disk is full\n']);
      assert.deepEqual(readdirSync(scratch.path).sort(), ['.bin', 'a.craft']);
    }));
});
