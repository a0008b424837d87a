import assert from 'node:assert/strict';
import { symlinkSync } from 'node:fs';
import { propsoff } from '../support/command-line';
import { withScratch } from '../support/scratch';

const wrong = '[arming]\ntilt-limt = 60 deg\n';

const fleet = {
  'a.craft': wrong,
  'race/b.craft': wrong,
  'race/old/c.craft': wrong,
  'race/old/notes.txt': wrong,
  'race/[x].craft': wrong,
  'node_modules/n.craft': wrong,
  '.hidden/h.craft': wrong,
};

/** The files in which something was found, in the order of the report. */
function checkedIn(cwd: string, ...args: readonly string[]) {
  const { stdout, stderr, status } = propsoff(['check', ...args], { cwd });
  const paths = stdout.split('\n').flatMap((line) => /^(\S+):2:1 must-fix/.exec(line)?.[1] ?? []);
  return { paths, stderr, status };
}

describe('paths on the command line', () => {
  const cases: readonly (readonly [args: string, found: readonly string[]])[] = [
    ['', ['a.craft', 'race/[x].craft', 'race/b.craft', 'race/old/c.craft']],
    ['race', ['race/[x].craft', 'race/b.craft', 'race/old/c.craft']],
    ['**', ['a.craft', 'race/[x].craft', 'race/b.craft', 'race/old/c.craft']],
    ['**/*.craft', ['a.craft', 'race/[x].craft', 'race/b.craft', 'race/old/c.craft']],
    ['race/*.craft', ['race/[x].craft', 'race/b.craft']],
    ['{a,race/b}.craft', ['a.craft', 'race/b.craft']],
    ['race/[x].craft', ['race/[x].craft']],
    ['race/**/*.txt', ['race/old/notes.txt']],
    ['a.craft . a.craft ./a.craft', ['a.craft', 'race/[x].craft', 'race/b.craft', 'race/old/c.craft']],
  ];
  for (const [args, found] of cases) {
    it(`"${args}" leads to ${found.join(', ')}`, () =>
      withScratch(fleet, async ({ path }) => {
        const given = args.split(' ').filter((one) => one !== '');
        assert.deepEqual(checkedIn(path, ...given), { paths: found, stderr: '', status: 1 });
      }));
  }

  it('that lead out of the folder by a link are not followed', () =>
    withScratch({ 'in/a.craft': wrong, 'out/b.craft': wrong }, async (scratch) => {
      symlinkSync(scratch.file('out'), scratch.file('in/link'));
      assert.deepEqual(checkedIn(scratch.file('in')).paths, ['a.craft']);
    }));

  it('that lead nowhere are told, each by itself, and the rest is checked', () =>
    withScratch(fleet, async ({ path }) => {
      const { paths, stderr, status } = checkedIn(path, '*.craf', 'race/old/n*', 'b.craft', 'a.craft');
      assert.deepEqual([paths, status], [['a.craft'], 2]);
      assert.deepEqual(stderr.trimEnd().split('\n'), [
        'propsoff: *.craf: no file matches this pattern',
        'propsoff: race/old/n*: no file that ends in .craft or .boardtext matches this pattern',
        'propsoff: b.craft: there is no such file or folder',
      ]);
    }));

  it('a folder without scripts says what was looked for', () =>
    withScratch({ 'notes.txt': '' }, async ({ path }) => {
      const { stderr, status } = checkedIn(path);
      assert.equal(status, 2);
      assert.equal(stderr, 'propsoff: there is no craft script here (*.craft, *.boardtext)\n');
    }));
});

describe('standard input with a name', () => {
  const files = { 'race/habits.craft': '[arming]\ntilt-limit = 45 deg\n', 'race/my.craft': '' };
  const script = 'include "habits.craft"\n[arming]\ntilt-limt = 60 deg\n';

  it('finds its includes beside that name, and is told by it', () =>
    withScratch(files, async ({ path }) => {
      const told = propsoff(['check', '-', '--name', 'race/my.craft'], { cwd: path, input: script }).stdout;
      assert.match(told, /^race\/my\.craft:3:1 must-fix line\/unknown-name/);
      assert.doesNotMatch(told, /include-missing/);
      const nameless = propsoff(['check', '-'], { cwd: path, input: script }).stdout;
      assert.match(nameless, /^-:1:9 must-fix line\/include-missing/m);
    }));

  it('counts more than the file of that name', () =>
    withScratch(files, async ({ path }) => {
      const args = ['check', '--json', 'race', '-', '--name', 'race/my.craft'];
      const { files: told } = JSON.parse(propsoff(args, { cwd: path, input: script }).stdout);
      const count = ({ path: file, findings }: { path: string; findings: object[] }) => [
        file,
        findings.length,
      ];
      assert.deepEqual(told.map(count), [
        ['race/habits.craft', 0],
        ['race/my.craft', 1],
      ]);
    }));

  it('serves every command that takes one script', () =>
    withScratch({}, async ({ path }) => {
      const input = '[craft]\nname = "Whinchat"\n[board]\nprofile = wren\n';
      for (const name of ['sheet', 'bench-card', 'board-text']) {
        const { status, stderr } = propsoff([name, '-', '--name', 'w.craft'], { cwd: path, input });
        assert.notEqual(status, 2, stderr);
      }
      const named = propsoff(['compare', '-', 'w.craft', '--name', 'earlier.craft'], { cwd: path, input });
      assert.match(named.stderr, /w\.craft: there is no such file/);
    }));

  it('is refused where nothing comes from standard input', () => {
    for (const name of ['check', 'sheet', 'format']) {
      const { status, stderr } = propsoff([name, 'test/demo/wagtail.craft', '--name', 'a.craft']);
      assert.equal(status, 2);
      assert.equal(stderr, 'propsoff: --name names standard input: add - to the paths\n');
    }
  });
});
