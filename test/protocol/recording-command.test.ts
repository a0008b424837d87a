import assert from 'node:assert/strict';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { propsoff } from '../support/command-line';
import { withScratch } from '../support/scratch';

const flight = readFileSync('test/demo/flights/before-the-rain.csv', 'utf8');
const files = {
  'my.craft': readFileSync('test/demo/sandmartin.craft', 'utf8'),
  'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8'),
  'flights/flight.csv': flight,
};

/** A logger whose motors count to something that nobody can know. */
function unknown(rows = 400): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const turn = (200 * Math.sin(row / 20)).toFixed(1);
    return `${row * 2},${turn},${turn},${turn},${600 + (row % 300)},${700 + (row % 200)}`;
  });
  return `time ms,gyro x,gyro y,gyro z,motor 1,motor 2\n${lines.join('\n')}\n`;
}

describe('propsoff recording', () => {
  it('says what a flight says, what was left out first, by the pilot’s questions', () =>
    withScratch(files, async ({ path }) => {
      const { stdout, status, stderr } = propsoff(
        ['recording', 'flights/flight.csv', '--craft', 'my.craft'],
        { cwd: path },
      );
      assert.ok(status === 0 || status === 1, stderr);
      assert.match(
        stdout,
        /^flights\/flight\.csv: [\d.]+ s at [\d.]+ rows a second; simulated: nobody flew it\n/,
      );
      const titles = [...stdout.matchAll(/^\S.*\?$|^What .*$|^Not read.*$/gm)].map(([line]) => line);
      const order = [
        'What its columns are taken for',
        'Does it shake, and from what?',
        'Does it follow?',
        'Is it late?',
        'Do the motors work alike?',
        'What does the pack give?',
        'What does hovering take?',
        'Does the link hold?',
        'What do the board’s numbers mean?',
      ];
      assert.deepEqual(
        titles.filter((line) => order.includes(line)),
        order,
      );
      assert.match(
        stdout,
        /^ {2}roll: [\d.]+ deg\/s \([\d.]+ to [\d.]+\); tones, before the board’s filters:$/m,
      );
      assert.match(
        stdout,
        /^ {4}follows up to \(−3 dB\): [\d.]+ Hz \([\d.]+ to [\d.]+\); script: [\d.]+ Hz in the hover$/m,
      );
      assert.match(stdout, /^ {4}proportional: [\d.]+ %\/\(deg\/s\) \(.*\); script: 0\.052 %\/\(deg\/s\)$/m);
      assert.match(stdout, /^ {2}All of this about yaw: not told\. The sticks .* an observer beside you/m);
      assert.match(stdout, /others differ\. A test hover decides/);
    }));

  it('tells learn what a listing’s gains are, and once it is said that they were flown, the sheet has margins', () => {
    const bare = files['my.craft'].replace(/^(?:proportional|integral|derivative) += .*\n/gm, '');
    const numbers = { lean: [52, 76, 26], nod: [56, 82, 28], swing: [70, 76, 0] };
    const axes = { lean: 'roll', nod: 'pitch', swing: 'yaw' };
    const names = { grip: 'proportional', hold: 'integral', brake: 'derivative' };
    const listing = Object.entries(numbers).flatMap(([group, values]) => [
      `[${group}]`,
      ...Object.keys(names).map((name, at) => `${name} = ${values[at]}`),
    ]);
    const roles = Object.entries(axes).flatMap(([group, axis]) =>
      Object.entries(names).flatMap(([name, term]) => ['--role', `${group}/${name}=control.${axis}.${term}`]),
    );
    return withScratch(
      {
        ...files,
        'my.craft': `include "tern.boardtext"\n${bare}`,
        // Two flights: the racer was picked up and flown again.
        'flights/before-the-rain.csv': `${flight.split('\n').slice(0, 1200).join('\n')}\n${flight}`,
        'tern.boardtext': `${listing.join('\n')}\n`,
      },
      async (scratch) => {
        const learn = (...more: readonly string[]) => {
          const flown = ['--recording', 'flights/before-the-rain.csv', '--craft', 'my.craft'];
          const run = propsoff(['learn', 'tern.boardtext', '--name', 'tern', ...roles, ...flown, ...more], {
            cwd: scratch.path,
          });
          assert.equal(run.status, 0, run.stderr);
          scratch.write('boards/tern.json', run.stdout);
          return run;
        };
        const sheet = () => propsoff(['sheet', 'my.craft'], { cwd: scratch.path }).stdout;
        const asked = learn();
        assert.match(
          asked.stderr,
          /^By flight 2 of the 2 in flights\/before-the-rain\.csv, the longest, on the craft/m,
        );
        assert.match(asked.stderr, /52 on roll was 0\.05\d+ %\/\(deg\/s\) .*; so 1 is 0\.001 %\/\(deg\/s\)/);
        assert.match(asked.stderr, /If tern\.boardtext is what the board held in that flight, say --flown/);
        assert.match(
          asked.stderr,
          /--confirm 'lean\/grip=control\.roll\.proportional unit \S+ scale 0\.001'/,
        );
        assert.doesNotMatch(asked.stdout, /"counts"/, 'nothing is taken by itself');
        assert.match(sheet(), /Phase margin at the worst place: roll +not known yet/);
        const args = ['recording', 'flights/before-the-rain.csv', '--craft', 'my.craft'];
        assert.match(
          propsoff(args, { cwd: scratch.path }).stdout,
          /come to: 0\.05\d+ %\/\(deg\/s\) about roll, .*\. Nobody has said so of tern\.boardtext yet\./,
        );
        assert.match(
          learn('--flown').stdout,
          /"means": "control\.pitch\.integral", "counts": \{"unit":"%\/deg","scale":200/,
        );
        assert.match(sheet(), /Phase margin at the worst place: roll +\d/);
      },
    );
  });

  it('puts what the last recorded flight measured beside the sheet, where that is asked for', () =>
    withScratch({ ...files, 'flights/before-the-rain.csv': flight }, async ({ path }) => {
      const sheet = (...more: readonly string[]) => propsoff(['sheet', 'my.craft', ...more], { cwd: path });
      assert.match(sheet().stdout, /^ {2}recorded in flights\/before-the-rain\.csv: --recorded reads/m);
      const { stdout } = sheet('--recorded');
      assert.match(
        stdout,
        /^ {2}Phase margin at the worst place: roll .*\n {4}measured on 2026-05-14, sprint: [\d.]+ deg \([\d.]+ to [\d.]+\)$/m,
      );
      assert.match(
        stdout,
        /^ {6}phase margin: \d+ deg .*; script: [\d.]+ deg in the hover; .* at the worst place$/m,
      );
      assert.match(
        stdout,
        /Read from flights\/before-the-rain\.csv; simulated: nobody flew it\. Rests on 22 s/,
      );
      writeFileSync(`${path}/bare.craft`, '[craft]\nname = "Plover"\n');
      const bare = propsoff(['sheet', 'bare.craft', '--recorded'], { cwd: path });
      assert.match(bare.stderr, /--recorded: no flight of bare\.craft names a recording/);
    }));

  it('says with which pack it is held against the script, where no flight names it and nobody said', () =>
    withScratch({ ...files, 'flights/before-the-rain.csv': flight }, async ({ path }) => {
      const taken = /no flight of the script names this recording: it is taken for one with the pack sprint/i;
      const run = (...args: readonly string[]) =>
        propsoff(['recording', ...args, '--craft', 'my.craft'], { cwd: path }).stdout;
      assert.match(run('flights/flight.csv'), taken);
      assert.doesNotMatch(run('flights/flight.csv', '--pack', 'cruise'), taken);
      assert.doesNotMatch(run('flights/before-the-rain.csv'), taken);
    }));

  it('asks what nobody can know, takes the answer, keeps it, and knows the logger again', () =>
    withScratch({ 'a.csv': unknown(), 'b.csv': unknown(500) }, async (scratch) => {
      const { path } = scratch;
      const run = (...args: readonly string[]) => propsoff(['recording', ...args], { cwd: path });
      const asked = run('a.csv', '--confirm', 'finch');
      assert.equal(asked.status, 1);
      assert.match(
        asked.stderr,
        /^Before it is kept, this has to be said:\n“motor 1”: Its numbers go from 600 to 898: what does the logger write at idle, and what at full\? --column "motor 1 = motor\.1 from 0 to 1000"/,
      );
      assert.equal(existsSync(scratch.file('recordings/finch.json')), false);
      const said = [
        '--column',
        'motor 1 = motor.2 from 0 to 1000',
        '--column',
        'motor 2 = motor.1 from 0 to 1000',
      ];
      const kept = run('a.csv', '--confirm', 'finch', '--columns', ...said);
      assert.equal(kept.status, 0, kept.stderr);
      assert.match(kept.stderr, /^Kept in recordings\/finch\.json: /);
      const again = run('b.csv', '--columns');
      assert.match(
        again.stdout,
        /“motor 1”: motor\.2, from 0 to 1000\n[\s\S]*As confirmed in recordings\/finch\.json\./,
      );
      assert.match(run('b.csv', '--layout', 'finch', '--columns').stdout, /As confirmed/);
      assert.equal(run('b.csv').status, 0);
    }));

  it('keeps no layout that nothing can be read by, and says what is left out', () =>
    withScratch(
      {
        'a.csv': unknown().replace('time ms', 'lapse ms').replaceAll('motor', 'wing'),
        'b.csv': unknown().split('\n').slice(1).join('\n'),
      },
      async (scratch) => {
        const run = (...args: readonly string[]) => propsoff(['recording', ...args], { cwd: scratch.path });
        const refused = run('a.csv', '--confirm', 'finch');
        assert.equal(refused.status, 1);
        assert.match(refused.stderr, /No column is known to hold the time; say which one does/);
        assert.equal(existsSync(scratch.file('recordings/finch.json')), false);
        const columns = run('a.csv', '--columns');
        assert.equal(columns.status, 1);
        assert.match(
          columns.stdout,
          /Not read, since nobody knows what they hold: “lapse ms”, “wing 1”, “wing 2”\./,
        );
        assert.match(run('a.csv').stderr, /how many rows a second there are\. --columns shows what/);
        const said = ['2', '3', '4', '5', '6'].flatMap((number) => [
          '--column',
          `column ${number} = nothing`,
        ]);
        const bare = run('b.csv', ...said, '--column', 'column 2 = gyro.roll in deg/s', '--confirm', 'finch');
        assert.match(
          bare.stderr,
          /^Kept in recordings\/finch\.json: a file without headings is known by nothing/,
        );
      },
    ));

  it('asks all that is open of a column at once', () =>
    withScratch({ 'a.csv': unknown().replaceAll('motor ', 'm') }, async ({ path }) => {
      const { stdout } = propsoff(['recording', 'a.csv', '--columns'], { cwd: path });
      assert.equal(stdout.match(/^“m1”: /gm)?.length, 1);
      assert.match(
        stdout,
        /^“m1”: Its heading says “m”.* what is it\? Its numbers go from .* and what at full\? --column/m,
      );
    }));

  it('tells of a layout that is damaged, and goes on without it', () =>
    withScratch({ 'a.csv': unknown(), 'recordings/finch.json': '{ "version": 2 }' }, async ({ path }) => {
      const { stdout, stderr } = propsoff(['recording', 'a.csv', '--columns'], { cwd: path });
      assert.match(stderr, /finch\.json is no layout of a recording \(line 1: .*\), and is not used\.\n/);
      assert.match(stdout, /Nobody has confirmed this/);
    }));

  it('puts an earlier recording beside it', () =>
    withScratch({ ...files, 'before.csv': flight }, async ({ path }) => {
      const { stdout, status } = propsoff(['recording', 'flights/flight.csv', '--compare', 'before.csv'], {
        cwd: path,
      });
      assert.ok(status === 0 || status === 1);
      assert.match(stdout, /^before: before\.csv: .*\nafter: flights\/flight\.csv: /);
      assert.match(stdout, /^ {2}Shaking about roll: .* → .*$/m);
      assert.doesNotMatch(stdout, /better|worse,/, 'a flight is neither better nor worse than itself');
    }));

  it('says in one line why it could not', () =>
    withScratch(
      { 'a.csv': unknown(), 'empty.csv': '', 'binary.csv': 'a,b\n\0\0\0\n', 'text.csv': 'one\ntwo\n' },
      async ({ path }) => {
        const cases: readonly (readonly [args: readonly string[], told: RegExp])[] = [
          [[], /recording takes one file/],
          [['no.csv'], /no\.csv: there is no such file or folder/],
          [['.'], /\.: it is a folder/],
          [['-'], /it has to be a file, not standard input/],
          [['empty.csv'], /empty\.csv: The file is empty; record and export it again\./],
          [['binary.csv'], /binary\.csv: This file is not a text; /],
          [['text.csv'], /text\.csv: No rows of numbers were found/],
          [['a.csv', '--flight', '7'], /--flight takes a number from 1 to 1, not "7"/],
          [['a.csv', '--column', 'gyro'], /--column takes what a column holds, such as .*; not "gyro"/],
          [['a.csv', '--column', 'gyro x = warp'], /--column takes what a column holds/],
          [
            ['a.csv', '--column', 'q = gyro.roll in deg/s'],
            /a\.csv has no column "q"; it has "time ms", "gyro x"/,
          ],
          [['a.csv', '--rate', 'often'], /--rate takes rows a second/],
          [['a.csv', '--layout', 'heron'], /there is no layout heron/],
          [['a.csv', '--craft', 'no.craft'], /no\.craft/],
          [['a.csv', '--compare', 'empty.csv'], /empty\.csv: The file is empty/],
        ];
        for (const [args, told] of cases) {
          const { status, stdout, stderr } = propsoff(['recording', ...args], { cwd: path });
          assert.equal(status, 2, args.join(' '));
          assert.equal(stdout, '');
          assert.match(stderr, told);
          assert.equal(stderr.trimEnd().split('\n').length, 1, stderr);
        }
        const bad = propsoff(
          [
            'recording',
            'a.csv',
            '--confirm',
            '../up',
            '--column',
            'motor 1 = nothing',
            '--column',
            'motor 2 = nothing',
          ],
          { cwd: path },
        );
        assert.match(bad.stderr, /--confirm takes a name of letters/);
      },
    ));
});
