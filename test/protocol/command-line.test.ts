import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { buzzer, textOf } from '../support/buzzer';
import { propsoffProcess, propsoff as run } from '../support/command-line';
import { faults, lineOf, spokenOf } from '../support/faults';

interface Report {
  readonly files: readonly {
    readonly path: string;
    readonly findings: readonly Parameters<typeof lineOf>[0][];
  }[];
}

function propsoff(args: readonly string[], input = '', cwd = process.cwd()) {
  return run(args, { input, cwd });
}

describe('the command line', () => {
  let folder = '';
  before(() => {
    folder = mkdtempSync(join(tmpdir(), 'propsoff-'));
  });
  after(() => rmSync(folder, { recursive: true }));

  const file = (name: string, content: string | Uint8Array) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };

  it('finds in each faulty script what must be found, as JSON', () => {
    const { status, stdout } = propsoff(['check', '--json', ...faults.map(({ path }) => path)]);
    assert.equal(status, 1);
    const report = JSON.parse(stdout) as Report;
    for (const [index, fault] of faults.entries()) {
      const found = report.files[index]?.findings.map(lineOf) ?? [];
      assert.deepEqual(spokenOf(fault, found), fault.expected, fault.name);
    }
  });

  it('shows the place, the level, the id and the line with a mark under it, without colour in a pipe', () => {
    const { status, stdout } = propsoffProcess(['check', '-'], { input: '[arming]\ntilt-limt = 60 deg\n' });
    assert.equal(status, 1);
    const [head, line, mark] = stdout.split('\n');
    assert.match(head ?? '', /^-:2:1 must-fix line\/unknown-name .*arming\.tilt-limit/);
    assert.deepEqual([line, mark], ['  tilt-limt = 60 deg', '  ^^^^^^^^^']);
    assert.ok(!stdout.includes('\u001b'));
  });

  it('ends with 0 where there is nothing to fix, and with 1 for risks only when strict', () => {
    const risky = file('risky.craft', '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 kHz\n');
    assert.equal(propsoffProcess(['check', risky]).status, 0);
    assert.equal(propsoffProcess(['check', '--strict', risky]).status, 1);
    assert.equal(propsoffProcess(['check', file('empty.craft', '')]).status, 0);
  });

  for (const [what, args, told] of [
    ['a file that is not there', ['check', 'nowhere.craft'], /nowhere\.craft: there is no such file/],
    ['an unknown option', ['check', '--fast'], /--fast/],
    ['an unknown command', ['fly'], /no command "fly"/],
    [
      'an unknown pack',
      ['check', '--pack', 'nope', 'test/demo/wagtail.craft'],
      /no.* pack "nope"|none of the scripts has a pack "nope"/,
    ],
    ['an unknown name', ['explain', 'stick.throtle.curv'], /did you mean stick\.throttle\.curve/],
  ] as const) {
    it(`ends with 2 and one clear line for ${what}`, () => {
      const { status, stderr } = propsoffProcess(args);
      assert.equal(status, 2);
      assert.match(stderr, told);
      assert.equal(stderr.trimEnd().split('\n').length, 1);
    });
  }

  it('refuses what is no text or not UTF-8, and leaves it as it is', () => {
    const binary = file('binary.craft', Uint8Array.of(0, 1, 2, 255));
    const latin = file('latin.craft', Uint8Array.of(91, 97, 93, 10, 0xe9, 10));
    assert.deepEqual(
      [propsoffProcess(['check', binary]).status, propsoffProcess(['format', latin]).status],
      [2, 2],
    );
  });

  it('formats standard input, and tells which scripts would change', () => {
    assert.equal(
      propsoffProcess(['format', '-'], { input: '[craft]\nmass=212 g\n' }).stdout,
      '[craft]\nmass = 212 g\n',
    );
    const untidy = file('untidy.craft', '[craft]\nmass=212 g\n');
    assert.equal(propsoffProcess(['format', '--check', untidy]).status, 1);
    assert.equal(propsoffProcess(['format', untidy]).status, 0);
    assert.equal(propsoffProcess(['format', '--check', untidy]).status, 0);
  });

  it('tells its version', () => {
    const version = /^propsoff \d+\.\d+\.\d+\n$/;
    for (const option of ['--version', '-V']) assert.match(propsoffProcess([option]).stdout, version);
  });

  it('formats a script with a byte order mark and keeps the mark', () => {
    const marked = file('marked.craft', '\ufeff[gyro]\nrate=8 kHz\n');
    assert.equal(propsoff(['format', marked]).status, 0);
    assert.equal(readFileSync(marked, 'utf8'), '\ufeff[gyro]\nrate = 8 kHz\n');
    assert.equal(
      propsoff(['format', '-'], '\ufeff[gyro]\nrate=8 kHz\n').stdout,
      '\ufeff[gyro]\nrate = 8 kHz\n',
    );
    assert.equal(propsoff(['format', '--check', marked]).status, 0);
  });

  it('explains a group by its parameters, and a last word by all that end in it', () => {
    assert.match(propsoff(['explain', 'gyro']).stdout, /gyro\.filter\.<number>\.cutoff +Cutoff/);
    assert.match(
      propsoff(['explain', 'cutoff']).stdout,
      /derivative\.filter\.<number>\.cutoff[\s\S]*gyro\.filter\.<number>\.cutoff/,
    );
    assert.match(
      propsoff(['explain', 'receiver.cutoff']).stderr,
      /did you mean derivative\.filter\.<number>\.cutoff/,
    );
  });

  it('explains a parameter and a check', () => {
    assert.match(propsoff(['explain', 'gyro.filter.1.cutoff']).stdout, /Prove it:/);
    assert.match(propsoff(['explain', 'wire/port-shared']).stdout, /Source:/);
  });

  it('knows what the folder "propsoff" of the current folder adds, and tells what is wrong with it', () => {
    const home = mkdtempSync(join(folder, 'home-'));
    const write = (name: string, text: string) => {
      mkdirSync(dirname(join(home, name)), { recursive: true });
      writeFileSync(join(home, name), text);
    };
    write('a.craft', '[buzzer]\ntune = 3.5 kHz\n');
    write('propsoff/buzzer.json', textOf(buzzer));
    const fine = propsoff(['check', '--strict'], '', home);
    assert.equal(fine.status, 1);
    assert.match(fine.stdout, /^a\.craft:2:8 risk buzzer\/shrill At 3\.5 kHz/);
    assert.match(propsoff(['explain', 'buzzer.tune'], '', home).stdout, /Pitch of the buzzer/);
    assert.match(propsoff(['explain', 'buzzer/shrill'], '', home).stdout, /heard from afar/);

    write('propsoff/buzzer.json', '{\n  "gears": 3\n}\n');
    const { status, stdout } = propsoff(['check'], '', home);
    assert.equal(status, 1);
    assert.match(
      stdout,
      /^propsoff\/buzzer\.json:2:3 must-fix addition\/shape "gears" is not known here\.\n {4}"gears": 3\n {4}\^{7}\n/,
    );
    const { files } = JSON.parse(propsoff(['check', '--json'], '', home).stdout) as Report;
    assert.deepEqual(
      files.map(({ path, findings }) => [path, findings.length]),
      [
        ['propsoff/buzzer.json', 1],
        ['a.craft', 1],
      ],
    );
  });

  it('names what the folder replaces, in every form of every command', () => {
    const home = mkdtempSync(join(folder, 'home-'));
    mkdirSync(join(home, 'propsoff'));
    const rule = {
      id: 'power/warn-below-land',
      level: 'risk',
      scope: 'pack',
      title: 'The warning comes before the landing voltage',
      message: 'The warning at {power.warn-cell} comes too late.',
      advice: 'Warn earlier than that.',
      when: ['power.warn-cell <= power.land-cell'],
      at: 'power.warn-cell',
    };
    const club = (change: object) =>
      writeFileSync(
        join(home, 'propsoff/club.json'),
        JSON.stringify({ replaces: [rule.id], checks: [{ ...rule, ...change }] }),
      );
    const lines =
      '[craft]\nname = "Knot"\n[board]\nprofile = wren\n[power]\nwarn-cell = 3.3 V\nland-cell = 3.4 V\n';
    writeFileSync(join(home, 'a.craft'), lines);
    club({});
    const said =
      'propsoff/club.json replaces the check power/warn-below-land: it was a must-fix and is now a risk.';
    const run = (...args: readonly string[]) => propsoff(args, '', home).stdout;
    assert.ok(run('check').includes(`\n${said}\n`));
    assert.deepEqual(JSON.parse(run('check', '--json')).replaced, [
      { what: 'check', name: rule.id, file: 'propsoff/club.json', before: 'must-fix', now: 'risk' },
    ]);
    const [{ invocations }] = JSON.parse(run('check', '--sarif')).runs;
    assert.deepEqual(invocations[0].toolExecutionNotifications.at(-1), {
      level: 'note',
      message: { text: said },
    });
    assert.ok(run('sheet', 'a.craft').includes(said));
    assert.deepEqual(JSON.parse(run('bench-card', 'a.craft', '--json')).replaced, [said]);
    const handed = propsoff(['board-text', 'a.craft', '--despite', 'a test'], '', home);
    assert.ok(handed.stderr.includes(said), handed.stderr);
    assert.match(handed.stdout, /propsoff\/club\.json replaces/);

    club({ when: ['power.warn-cell > 100 V', 'power.land-cell is set'] });
    const idle = propsoff(['check'], '', home);
    assert.equal(idle.status, 1);
    assert.match(
      idle.stdout,
      /^propsoff\/club\.json:\d+:\d+ risk addition\/never .* stays in force as it is built in\./,
    );
    assert.match(idle.stdout, /must-fix power\/warn-below-land/);
    assert.doesNotMatch(idle.stdout, /replaces the check/);
  });
});
