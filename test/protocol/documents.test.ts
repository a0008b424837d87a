import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, readFileSync, symlinkSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { built } from '../support/built';
import { plainArguments, propsoff } from '../support/command-line';
import { type CodeBlock, codeBlocks, documents } from '../support/document';
import { Scratch } from '../support/scratch';

const root = join(__dirname, '../..');
const blocks = documents.flatMap(codeBlocks);
const of = (language: string) => blocks.filter((block) => block.language === language);
const titleOf = ({ document, line }: CodeBlock) => `${document}, line ${line}`;

/** What is not run here: it is not there on every machine, changes the machine, or does not end by itself. */
const notRun = /^(code|npx|git|npm ci|npm link|npm install)\b|--watch\b/;
const npmScript = /^npm (?:run )?([\w:]+)/;
const ours = /(^|\| *)(propsoff|node dist\/propsoff\.js)\b/;

/** The commands of a block, without what is said behind them. Whole scripts have tests of their own. */
function commandsOf({ text }: CodeBlock): readonly string[] {
  if (text.startsWith('#!')) return [];
  return text
    .split('\n')
    .flatMap((line) => line.replace(/(^| +)# .*$/, '').split(' && '))
    .filter((command) => command.trim() !== '');
}

describe('the examples in the documents', () => {
  let scratch = new Scratch();

  /** Runs a command as a reader would, in a folder that has what the examples speak of, or in one of that. */
  function run(command: string, folder = '.') {
    const cwd = scratch.file(folder);
    const plain = plainArguments(command);
    if (plain !== null) return propsoff(plain, { cwd, env: { NO_COLOR: '1' } });
    const { status, stdout, stderr } = spawnSync('sh', ['-c', command], {
      cwd,
      encoding: 'utf8',
      timeout: 30_000,
      env: { ...process.env, NO_COLOR: '1', PATH: [scratch.file('bin'), process.env.PATH].join(delimiter) },
    });
    return { status, stdout, stderr };
  }

  before(() => {
    const demo = (name: string) => readFileSync(join(root, 'test/demo', name), 'utf8');
    scratch = new Scratch({
      'my.craft': demo('sandmartin.craft'),
      'old.craft': demo('sandmartin.craft').replace('212 g', '230 g'),
      'club-habits.craft': demo('club-habits.craft'),
      'bin/propsoff': `#!/bin/sh\nexec '${process.execPath}' '${built('propsoff.js')}' "$@"\n`,
    });
    chmodSync(scratch.file('bin/propsoff'), 0o755);
    cpSync(join(root, 'test/demo'), scratch.file('test/demo'), { recursive: true });
    cpSync(join(root, 'test/demo/recordings'), scratch.file('recordings'), { recursive: true });
    cpSync(join(root, 'test/demo/flights/before-the-rain.csv'), scratch.file('flight.csv'));
    symlinkSync(dirname(built('propsoff.js')), scratch.file('dist'));
    const { status, stdout, stderr } = run('propsoff board-text my.craft');
    assert.equal(status, 0, stderr);
    scratch.write('captured.txt', stdout);
  });
  after(() => scratch.remove('.'));

  for (const block of of('craft')) {
    it(`${titleOf(block)}: a script of which every line is understood`, () => {
      scratch.write('example.craft', block.text);
      const { stdout } = run('propsoff check --json example.craft');
      const { files } = JSON.parse(stdout) as { files: readonly { findings: readonly { id: string }[] }[] };
      const ids = files.flatMap(({ findings }) => findings.map(({ id }) => id));
      assert.deepEqual(
        ids.filter((id) => id.startsWith('line/')),
        [],
      );
    });
  }

  for (const block of of('json').filter(isKeptBeside)) {
    it(`${titleOf(block)}: what is kept beside a board’s text, with nothing wrong in it`, () => {
      scratch.write('kept/wren.boardtext', 'wake/arming-tilt-most <- 180\n');
      scratch.write('kept/wren.boardtext.board.json', block.text);
      const { stdout } = run('propsoff check .', 'kept');
      assert.match(stdout, /note safe\/arms-at-any-tilt/);
      assert.doesNotMatch(stdout, /board\/(beside-unreadable|acceptance-unmatched)/);
    });
  }

  for (const block of of('json').filter((one) => !isKeptBeside(one))) {
    it(`${titleOf(block)}: a file that adds to the catalogue, with nothing wrong in it`, () => {
      scratch.write('adds/propsoff/example.json', block.text);
      const hasCheck = block.text.includes('"buzzer/shrill"');
      scratch.write('adds/my.craft', hasCheck ? 'buzzer.tune = 3.5 kHz\n' : 'let quiet = 90 Hz\n');
      const { status, stdout, stderr } = run('propsoff check --strict .', 'adds');
      assert.equal(status, hasCheck ? 1 : 0, stderr + stdout);
      assert.match(stdout, hasCheck ? /0 must-fix, 1 risk/ : /0 must-fix, 0 risk/);
      if (hasCheck)
        assert.match(stdout, /my\.craft:1:\d+ risk buzzer\/shrill At 3\.5 kHz the call does not carry far\./);
    });
  }

  for (const block of of('jsonc')) {
    it(`${titleOf(block)}: what a folder chooses, with nothing wrong in it`, () => {
      scratch.write('chooses/propsoff.json', block.text);
      for (const folder of ['race', 'habits'])
        scratch.write(`chooses/${folder}/quiet.craft`, 'let quiet = 90 Hz\n');
      const { status, stdout, stderr } = run('propsoff check', 'chooses');
      assert.equal(status, 0, stderr + stdout);
      assert.match(stdout, /^2 scripts checked/m);
    });
  }

  for (const block of of('sh')) {
    for (const command of commandsOf(block)) {
      if (notRun.test(command.trim())) continue;
      it(`${titleOf(block)}: ${command.trim()}`, () => {
        const script = npmScript.exec(command.trim())?.[1];
        if (script !== undefined) {
          const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
            scripts: Readonly<Record<string, string>>;
          };
          assert.ok(script in scripts, `package.json has no script ${script}`);
          return;
        }
        assert.match(command, ours, 'a command that nobody tries');
        const { status, stderr } = run(command.trim());
        assert.ok(status === 0 || status === 1, `exit code ${status}: ${stderr}`);
      });
    }
  }

  for (const block of of('console')) {
    it(`${titleOf(block)}: shows what is printed`, () => {
      const [first = '', ...shown] = block.text.split('\n');
      assert.ok(first.startsWith('$ '), 'begins with the command');
      const { stdout, stderr } = run(first.slice(2));
      assert.equal(stdout + stderr, shown.join('\n'));
    });
  }

  it('are all of a kind that is tried', () => {
    const kinds = new Set(blocks.map(({ language }) => language));
    // Set-ups of other editors are tried in those; samples for services and of types in tests of their own.
    const tried = ['', 'craft', 'json', 'jsonc', 'sh', 'console', 'lua', 'elisp', 'js', 'ts', 'yaml'];
    assert.deepEqual(
      [...kinds].filter((kind) => !tried.includes(kind)),
      [],
    );
    for (const kind of ['craft', 'json', 'sh', 'console']) assert.ok(kinds.has(kind), kind);
  });
});

describe('the change log', () => {
  const lines = readFileSync(join(root, 'CHANGELOG.md'), 'utf8').split('\n');

  it('keeps the form: versions newest first, with dates, and kinds of change that the form has', () => {
    const versions = lines.filter((line) => line.startsWith('## '));
    const kinds = lines.filter((line) => line.startsWith('### '));
    assert.equal(versions[0], '## [Unreleased]');
    for (const version of versions.slice(1))
      assert.match(version, /^## \[\d+\.\d+\.\d+\] - \d{4}-\d\d-\d\d$/);
    const dates = versions.slice(1).map((line) => line.slice(-10));
    assert.deepEqual(dates, [...dates].sort().reverse());
    for (const kind of kinds) assert.match(kind, /^### (Added|Changed|Deprecated|Removed|Fixed|Security)$/);
    assert.ok(kinds.length > 0);
  });

  it('says each change in one item that ends as a sentence', () => {
    const items = lines.filter((line) => line.startsWith('- '));
    assert.ok(items.length > 5);
    for (const item of items) assert.match(item, /^- [A-Z].*\.$/);
  });
});

/** What lies beside a board's text, and adds nothing to the catalogue. */
function isKeptBeside({ text }: { readonly text: string }): boolean {
  return text.includes('"accepted"');
}
