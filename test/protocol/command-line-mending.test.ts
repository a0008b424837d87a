import assert from 'node:assert/strict';
import { propsoff } from '../support/command-line';
import { withScratch } from '../support/scratch';

const misspelt = '[arming]\ntilt-limt = 60 deg\n';
/** One fix brings a section in which the next finding has no fix of its own. */
const misplaced = '[video]\nport = uart1\n';

describe('check --fix', () => {
  it('mends in the file what has one fix, tells what it did, and reports what is left', () =>
    withScratch({ 'a.craft': `${misspelt}needed = 3\n` }, async (scratch) => {
      const { status, stdout, stderr } = propsoff(['check', '--fix', 'a.craft'], { cwd: scratch.path });
      assert.equal(scratch.read('a.craft'), '[arming]\ntilt-limit = 60 deg\nneeded = 3\n');
      assert.equal(stderr, 'a.craft mended: Write tilt-limit\n');
      assert.equal(status, 1);
      assert.match(stdout, /^a\.craft:3:1 must-fix line\/unknown-name/);
      assert.doesNotMatch(stdout, /tilt-limt/);
    }));

  it('takes the first of several fixes with --unsafe only', () =>
    withScratch({ 'a.craft': misplaced }, async (scratch) => {
      propsoff(['check', '--fix'], { cwd: scratch.path });
      assert.equal(scratch.read('a.craft'), misplaced);
      const { stderr } = propsoff(['check', '--fix', '--unsafe'], { cwd: scratch.path });
      assert.match(stderr, /^a\.craft mended: /);
      assert.notEqual(scratch.read('a.craft'), misplaced);
    }));

  it('sees in one script what it has mended in another', () =>
    withScratch({ 'a.craft': 'include "b.craft"\n', 'b.craft': misspelt }, async (scratch) => {
      const { status } = propsoff(['check', '--fix'], { cwd: scratch.path });
      assert.equal(scratch.read('b.craft'), '[arming]\ntilt-limit = 60 deg\n');
      assert.equal(status, 0);
    }));

  it('keeps line ends and a byte order mark', () =>
    withScratch({ 'a.craft': `\ufeff${misspelt.replaceAll('\n', '\r\n')}` }, async (scratch) => {
      propsoff(['check', '--fix'], { cwd: scratch.path });
      assert.equal(scratch.read('a.craft'), '\ufeff[arming]\r\ntilt-limit = 60 deg\r\n');
    }));

  it('leaves a board’s own text as it is, and says so', () =>
    withScratch({ 'a.boardtext': 'loud 3\n' }, async (scratch) => {
      const { status, stderr } = propsoff(['check', '--fix'], { cwd: scratch.path });
      assert.equal(status, 2);
      assert.match(stderr, /^propsoff: a\.boardtext was left as it was: it is a board’s own text/m);
      assert.equal(scratch.read('a.boardtext'), 'loud 3\n');
    }));

  for (const [args, told] of [
    [['--unsafe'], /add --fix/],
    [['--fix', '-'], /standard input is none/],
    [['--fix', '--watch'], /leave --fix out/],
    [['--fix', '--pack', 'one'], /leave --pack out/],
  ] as const) {
    it(`is refused as ${args.join(' ')}, with a line that says why`, () => {
      const { status, stderr } = propsoff(['check', ...args]);
      assert.equal(status, 2);
      assert.match(stderr, told);
      assert.equal(stderr.trimEnd().split('\n').length, 1);
    });
  }
});

describe('format --diff', () => {
  it('shows what would change and changes nothing', () =>
    withScratch({ 'a.craft': '[craft]\nmass=212 g\n' }, async (scratch) => {
      const { status, stdout } = propsoff(['format', '--diff'], { cwd: scratch.path });
      assert.equal(status, 1);
      const patch = '--- a.craft\n+++ a.craft\n@@ -1,2 +1,2 @@\n [craft]\n-mass=212 g\n+mass = 212 g\n';
      assert.equal(stdout, patch);
      assert.equal(scratch.read('a.craft'), '[craft]\nmass=212 g\n');
    }));

  it('is silent and fine where nothing would change', () => {
    const { status, stdout } = propsoff(['format', '--diff', '-'], { input: '[craft]\nmass = 212 g\n' });
    assert.deepEqual([status, stdout], [0, '']);
  });
});

describe('a quiet command line', () => {
  it('says of a check only what makes it fail, and nothing where nothing does', () => {
    const risky = '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 kHz\n';
    const input = `${misspelt}${risky}`;
    const { status, stdout } = propsoff(['check', '--quiet', '-'], { input });
    assert.equal(status, 1);
    assert.deepEqual(stdout.split('\n').filter((line) => line.startsWith('-:')).length, 1);
    assert.match(stdout, /Read as a part/);
    assert.doesNotMatch(stdout, /script checked/);
  });

  it('does not name what it formats', () =>
    withScratch({ 'a.craft': '[craft]\nmass=212 g\n' }, async (scratch) => {
      const { status, stdout } = propsoff(['format', '--quiet'], { cwd: scratch.path });
      assert.deepEqual([status, stdout], [0, '']);
      assert.equal(scratch.read('a.craft'), '[craft]\nmass = 212 g\n');
    }));
});

describe('annotations', () => {
  it('are a line each, in which nothing can be taken for an end or an order', () =>
    withScratch({ 'a,b.craft': '[arming]\n# 100 %\ntilt-limit = 100%\n' }, async (scratch) => {
      const { status, stdout } = propsoff(['check', '--annotations'], { cwd: scratch.path });
      assert.equal(status, 1);
      const [first = '', ...rest] = stdout.trimEnd().split('\n');
      assert.match(
        first,
        /^::error file=a%2Cb\.craft,line=3,endLine=3,col=14,endColumn=\d+,title=must-fix line\/[a-z-]+::[^%]/,
      );
      assert.doesNotMatch(first, /%(?!25|0A|2C|3A)/);
      assert.match(rest.join('\n'), /^::notice file=a%2Cb\.craft::Read as a part/m);
    }));

  it('are one form of report among others', () => {
    assert.match(propsoff(['check', '--annotations', '--json']).stderr, /one form: --json or --annotations/);
  });
});
