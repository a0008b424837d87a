import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import stringWidth from 'string-width';
import { plainArguments, propsoff, propsoffProcess } from '../support/command-line';
import { withScratch } from '../support/scratch';
import { shellIn } from '../support/shell';

const escapeCode = '\u001b';
const wrong = '[arming]\ntilt-limt = 60 deg\n';

describe('colours', () => {
  const cases: readonly (readonly [env: Readonly<Record<string, string>>, has: boolean])[] = [
    [{}, false],
    [{ FORCE_COLOR: '1' }, true],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, true],
    [{ FORCE_COLOR: '0' }, false],
  ];
  for (const [env, has] of cases) {
    it(`${has ? 'are there' : 'are not there'} in a pipe with ${JSON.stringify(env)}`, () => {
      const { stdout } = propsoffProcess(['check', '-'], { input: wrong, env });
      assert.equal(stdout.includes(escapeCode), has);
    });
  }

  it('are there when somebody asks for them, and gone when somebody does not want them', () => {
    const has = (...args: readonly string[]) =>
      propsoffProcess(['check', '-', ...args], { input: wrong, env: { NO_COLOR: '1' } }).stdout.includes(
        escapeCode,
      );
    assert.deepEqual(
      [has('--color', 'always'), has('--color=never'), has('--color', 'auto')],
      [true, false, false],
    );
    assert.match(
      propsoffProcess(['check', '--color', 'pink']).stderr,
      /--color takes always, never or auto, not "pink"/,
    );
  });

  it('change no word', () => {
    const plain = propsoffProcess(['check', '-'], { input: wrong }).stdout;
    const { stdout } = propsoffProcess(['check', '-'], { input: wrong, env: { FORCE_COLOR: '1' } });
    assert.equal(stdout.replaceAll(new RegExp(`${escapeCode}\\[\\d+m`, 'g'), ''), plain);
  });
});

describe('the width', () => {
  const commands: readonly (readonly string[])[] = [
    ['check', 'test/faults'],
    ['explain', 'gyro.filter.1.cutoff'],
    ['explain', 'wire/port-shared'],
    ['compare', 'test/demo/sandmartin.craft', 'test/demo/wagtail.craft'],
    ['find', 'test/demo/wagtail.craft', '--all'],
    ['--help'],
    ['check', '--help'],
  ];
  for (const command of commands) {
    it(`is kept by ${command.join(' ')}, and no word is lost`, () => {
      const { stdout } = propsoff(command, { env: { COLUMNS: '72' } });
      const tooWide = stdout
        .split('\n')
        .filter((line) => stringWidth(line) > 72 && /\S\s+\S/.test(line.trim()));
      assert.deepEqual(tooWide, []);
      const words = (text: string) => text.replaceAll(/[\^\s]+/g, ' ');
      if (command[0] === 'compare') assert.equal(words(stdout), words(propsoff(command).stdout));
    });
  }

  it('is no matter in a pipe: each finding is told in one line', () => {
    const { stdout } = propsoff(['check', 'test/faults']);
    const heads = stdout.split('\n').filter((line) => line.startsWith('test/faults/'));
    assert.ok(heads.length > 100 && heads.some((line) => line.length > 150));
    const form =
      /^\S+(:\d+:\d+ (must-fix|risk|note|tidy) \S+ .*[.?]| .* was not checked\.| .* not known yet\. .*\.)$/;
    for (const head of heads) assert.match(head, form);
  });

  it('is that of the terminal, and prose is no wider than is read with ease', () => {
    for (const line of propsoff(['--help'], { env: { COLUMNS: '200' } }).stdout.split('\n'))
      assert.ok(line.length <= 96, line);
  });
});

describe('output that can go nowhere', () => {
  const told = (why: string) => `propsoff: the output was cut off: ${why}\n`;
  const ways: readonly (readonly [line: string, why: string])[] = [
    ['propsoff check a.craft > /dev/full', 'the disk is full'],
    ['propsoff check --json a.craft > /dev/full', 'the disk is full'],
    ['propsoff --help > /dev/full', 'the disk is full'],
    ['propsoff explain gyro > /dev/full', 'the disk is full'],
    // A part of the text still fits.
    ['ulimit -f 2; propsoff check a.craft --json > report.json', 'files may not be that long here'],
    ['propsoff format - < long.craft > /dev/full', 'the disk is full'],
    ['mkfifo pipe; (: < pipe) & propsoff format - < long.craft > pipe', 'its reader is gone'],
  ];
  for (const [line, why] of ways) {
    it(`ends with 2 and one line: ${line}`, () =>
      withScratch(
        { 'a.craft': wrong.repeat(20), 'long.craft': '# note\n'.repeat(100_000) },
        async (scratch) => {
          const { status, stderr } = shellIn(scratch)(line);
          assert.deepEqual([status, stderr], [2, told(why)]);
        },
      ));
  }

  it('ends with 2 as well where nothing can be told', () =>
    withScratch({}, async (scratch) =>
      assert.equal(shellIn(scratch)('propsoff check nowhere.craft 2> /dev/full').status, 2),
    ));
});

describe('the help', () => {
  const names = [
    'check',
    'format',
    'explain',
    'sheet',
    'compare',
    'find',
    'channels',
    'bench-card',
    'board-text',
    'read',
    'prove',
    'learn',
    'recording',
  ];
  const demo = (name: string) => readFileSync(join(resolve('test/demo'), name), 'utf8');

  it('lists every command', () => {
    const { stdout, status } = propsoff(['--help']);
    assert.equal(status, 0);
    for (const name of names) assert.match(stdout, new RegExp(`^ {2}${name} {2,}[a-z]`, 'm'));
  });

  for (const name of names) {
    it(`of ${name} tells its options, its exit codes and examples`, () => {
      const { stdout, status } = propsoff([name, '--help']);
      assert.equal(status, 0);
      assert.match(stdout, new RegExp(`^Usage\\n( {2}propsoff ${name} .*\\n)+\\n`));
      assert.match(stdout, /^Options\n {2}--/m);
      assert.match(stdout, /^Examples\n {2}\S/m);
      assert.match(stdout, /^Exit codes\n {2}0 {2}/m);
      assert.equal(propsoff(['help', name]).stdout, stdout);
    });
  }

  it('holds examples that run as they stand', () =>
    withScratch(
      { 'club-habits.craft': demo('club-habits.craft'), 'old.craft': demo('wagtail.craft') },
      async (scratch) => {
        const run = shellIn(scratch);
        const runExample = (line: string) => {
          const plain = plainArguments(line);
          return plain === null ? run(line) : propsoff(plain, { cwd: scratch.path });
        };
        // One of the examples leaves the load at home.
        scratch.write('my.craft', demo('sandmartin.craft').replace('[craft]\n', '[craft]\npayload = 90 g\n'));
        scratch.write('draft.txt', demo('sandmartin.craft'));
        // Ten of its seconds: what an example answers is no matter here, but that it does.
        const flight = demo('flights/before-the-rain.csv').split('\n').slice(0, 4000).join('\n');
        for (const name of ['flight.csv', 'before.csv', 'flights/before-the-rain.csv'])
          scratch.write(name, `${flight}\n`);
        scratch.write('race/a.craft', '[gyro]\nrate = 8 kHz\n');
        assert.equal(run('propsoff board-text my.craft > captured.txt').status, 0);
        const first = 'git init --quiet && git add . && git commit --quiet --message first';
        assert.equal(run(`${first} && git commit --quiet --message second --allow-empty`).status, 0);
        const asked = /^What pilots ask\n([\s\S]*?)\n\n/m.exec(propsoff(['--help']).stdout)?.[1] ?? '';
        const answered = [...asked.matchAll(/^ {2}(\S.*)$/gm)].map(([, line = '']) => line);
        assert.equal(answered.length, 5);
        for (const line of answered) assert.equal(runExample(line).status, 0, line);
        for (const name of names) {
          const examples = /^Examples\n([\s\S]*?)\n\n/m.exec(propsoff([name, '--help']).stdout)?.[1] ?? '';
          const lines = [...examples.matchAll(/^ {2}(\S.*)$/gm)].map(([, line = '']) => line);
          assert.ok(lines.length > 0, name);
          for (const line of lines) {
            const { status, stderr } = runExample(line);
            assert.ok(status === 0 || status === 1, `${line}: ${status} ${stderr}`);
          }
        }
      },
    )).timeout(300_000);
});

describe('words that are not known', () => {
  const cases: readonly (readonly [args: readonly string[], told: RegExp])[] = [
    [['chekc'], /^propsoff: there is no command "chekc"; did you mean check\?\n$/],
    [['frobnicate'], /^propsoff: there is no command "frobnicate"; try one of: check, format, /],
    [['check', '--strit'], /^propsoff: Unknown option '--strit'; did you mean --strict\? /],
    [
      ['check', '--fail-on', 'bad'],
      /^propsoff: --fail-on takes must-fix, risk, note, tidy or never, not "bad"\n$/,
    ],
    [['check', '--fail-on', 'note', '--strict'], /^propsoff: --strict is --fail-on risk: say one of them\n$/],
    [['check', '--json', '--sarif'], /^propsoff: check writes one form: --json or --sarif\n$/],
    [['check', '--watch', '--json'], /^propsoff: --watch tells people: leave --json out\n$/],
    [['check', '--watch', '-'], /^propsoff: --watch watches files, and standard input is none\n$/],
    [['check', ''], /^propsoff: an argument is empty\n$/],
    [['sheet', '--pack', '', 'test/demo'], /^propsoff: --pack is empty\n$/],
    [['sheet', '--pack', 'a', '--pack', 'b', 'x'], /^propsoff: --pack is given more than once\n$/],
    [['sheet', '--pack', '-x'], /^propsoff: Option '--pack' argument is ambiguous; propsoff sheet --help /],
    [['help', 'check', 'sheet'], /^propsoff: help takes one command\n$/],
    [['check', 'nowhere.craft'], /^propsoff: nowhere\.craft: there is no such file or folder\n$/],
    [['sheet', 'test/demo'], /^propsoff: sheet takes one script; test\/demo holds 4 of them\n$/],
  ];
  for (const [args, told] of cases) {
    it(`"${args.join(' ')}" ends with 2 and one line that says what to do`, () => {
      const { status, stderr, stdout } = propsoff(args);
      assert.equal(status, 2);
      assert.match(stderr, told);
      assert.deepEqual([stderr.trimEnd().split('\n').length, stdout], [1, '']);
    });
  }
});

describe('--fail-on', () => {
  const tidy = '[gyro]\nrate = 8 kHz\n[gyro]\n';
  const risk = '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 kHz\n';
  const cases: readonly (readonly [level: string, input: string, status: number])[] = [
    ['must-fix', risk, 0],
    ['must-fix', wrong, 1],
    ['risk', risk, 1],
    ['risk', tidy, 0],
    ['tidy', tidy, 1],
    ['tidy', '', 0],
    ['never', wrong, 0],
  ];
  for (const [level, input, status] of cases) {
    it(`${level} ends with ${status} for ${JSON.stringify(input)}`, () => {
      assert.equal(propsoff(['check', '-', '--fail-on', level], { input }).status, status);
    });
  }

  it('never fails for what the script accepts', () => {
    const [, id = ''] = / risk (\S+)/.exec(propsoff(['check', '-'], { input: risk }).stdout) ?? [];
    const input = risk.replace('3 kHz', `3 kHz  # accept ${id}: a wind tunnel`);
    const { stdout, status } = propsoff(['check', '-', '--fail-on', 'tidy'], { input });
    assert.equal(status, 0, stdout);
    assert.match(stdout, /0 risk, 1 note/);
  });
});
