import assert from 'node:assert/strict';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { propsoff as run } from '../support/command-line';
import { type Scratch, withScratch } from '../support/scratch';

const demo = 'test/demo';
const files = {
  'club-habits.craft': readFileSync(join(demo, 'club-habits.craft'), 'utf8'),
  'racer.craft': readFileSync(join(demo, 'sandmartin.craft'), 'utf8'),
};

function propsoff(cwd: string, args: readonly string[], input = '') {
  return run(args, { cwd, input });
}

/** A folder with the racer, and its text for a board as though it had been captured from it. */
function captured(board: string, run: (here: { scratch: Scratch; lines: string[] }) => void) {
  return () =>
    withScratch(files, async (scratch) => {
      const { status, stdout } = propsoff(scratch.path, ['board-text', 'racer.craft', '--board', board]);
      assert.equal(status, 0);
      run({ scratch, lines: stdout.split('\n') });
    });
}

for (const board of ['heron', 'wren']) {
  describe(`the racer on ${board}, on the command line`, () => {
    const prove = (scratch: Scratch, lines: readonly string[], ...more: string[]) => {
      scratch.write('captured.txt', lines.join('\n'));
      // The racer leaves its compass unused, and wren has none.
      const args = ['prove', 'racer.craft', 'captured.txt', '--board', board, '--except', 'board.compass'];
      return propsoff(scratch.path, [...args, ...more]);
    };
    const channel = (lines: readonly string[]) => lines.findIndex((line) => /order.*AETR|AETR/.test(line));

    it(
      'is proved equal to what was captured back',
      captured(board, ({ scratch, lines }) => {
        const { status, stdout } = prove(scratch, lines);
        assert.equal(status, 0, stdout);
        assert.match(stdout, /The board holds what the script says\./);
      }),
    );

    it(
      'shows one line that holds something else, at its place',
      captured(board, ({ scratch, lines }) => {
        const at = channel(lines);
        const { status, stdout } = prove(scratch, lines.with(at, (lines[at] ?? '').replace('AETR', 'TAER')));
        assert.equal(status, 1);
        assert.match(stdout, new RegExp(`^captured\\.txt:${at + 1} .*different: .*AETR.*TAER`, 'm'));
        assert.match(stdout, /, 1 different, 0 missing, 0 there twice, 0 not set by the script/);
      }),
    );

    it(
      'shows where it arms otherwise, with both values',
      captured(board, ({ scratch, lines }) => {
        const at = lines.findIndex((line) => /arming.live.from/.test(line));
        const { status, stdout } = prove(scratch, lines.with(at, (lines[at] ?? '').replace('1750', '1300')));
        assert.equal(status, 1);
        const different = 'different: the script says 1750, the board holds 1300';
        assert.match(
          stdout,
          new RegExp(`^captured\\.txt:${at + 1} .*switch\\.arm\\.on\\) ${different}$`, 'm'),
        );
      }),
    );

    it(
      'names a line that was dropped',
      captured(board, ({ scratch, lines }) => {
        const { status, stdout } = prove(scratch, lines.toSpliced(channel(lines), 1));
        assert.equal(status, 1);
        assert.match(stdout, /receiver\.order\) missing/);
      }),
    );

    it(
      'shows a line that stands there twice, at the second',
      captured(board, ({ scratch, lines }) => {
        const at = channel(lines);
        const { status, stdout } = prove(scratch, lines.toSpliced(at, 0, lines[at] ?? ''));
        assert.equal(status, 1);
        assert.match(stdout, new RegExp(`^captured\\.txt:${at + 2} .*there twice`, 'm'));
      }),
    );

    it(
      'notices that the end was cut off',
      captured(board, ({ scratch, lines }) => {
        const { status, stdout } = prove(scratch, lines.slice(0, Math.floor(lines.length / 2)));
        assert.equal(status, 1);
        assert.match(stdout, /captured\.txt was cut off/);
        assert.match(stdout, /missing/);
      }),
    );

    it(
      'tells the same as data, with lines counted from 0',
      captured(board, ({ scratch, lines }) => {
        const at = channel(lines);
        const changed = lines.with(at, (lines[at] ?? '').replace('AETR', 'TAER'));
        const proof = JSON.parse(prove(scratch, changed, '--json').stdout);
        assert.deepEqual(
          [proof.version, proof.board, proof.pack, proof.isWhole],
          [1, board, 'sprint', false],
        );
        const different = proof.rows.filter(({ verdict }: { verdict: string }) => verdict === 'different');
        assert.deepEqual(
          different.map(({ path, line }: { path: string; line: number }) => [path, line]),
          [['receiver.order', at]],
        );
      }),
    );

    it(
      'comes back as a script that says the same',
      captured(board, ({ scratch, lines }) => {
        scratch.write('captured.txt', lines.join('\n'));
        const read = propsoff(scratch.path, ['read', 'captured.txt']);
        assert.equal(read.status, 0, read.stderr);
        assert.match(read.stderr, / 0 lines not understood/);
        scratch.write('read.craft', read.stdout);
        const { status, stdout } = propsoff(scratch.path, [
          'prove',
          'read.craft',
          'captured.txt',
          '--board',
          board,
        ]);
        assert.equal(status, 0, stdout);
      }),
    );

    it(
      'says which pack it is for, in the text, beside it and in its record',
      captured(board, ({ scratch }) => {
        const hand = (...more: string[]) =>
          propsoff(scratch.path, ['board-text', 'racer.craft', '--board', board, '--record', ...more]);
        const first = hand();
        assert.match(first.stdout, /^.{1,4}These are the settings with pack sprint\.\r?$/m);
        assert.match(first.stderr, /^\d+ settings for \w+, pack sprint\.$/m);
        assert.match(first.stderr, /^The script has other packs: cruise; --pack takes one of them\.$/m);
        assert.match(scratch.read('racer.craft.handed.json'), /"pack": "sprint"/);
        const other = hand('--pack', 'cruise', '--changed');
        assert.match(other.stdout, /the settings with pack cruise\.\r?$/m);
        assert.match(other.stderr, /, pack cruise, changed since the last hand-over, of pack sprint\.$/m);
        assert.doesNotMatch(other.stderr, /other packs/);
        const { stdout } = prove(scratch, first.stdout.split('\n'), '--pack', 'cruise');
        assert.match(stdout, /^With pack cruise: .* \d+ settings equal, /m);
      }),
    );

    it(
      'is written again only where it changed, once it is recorded',
      captured(board, ({ scratch }) => {
        const hand = (...more: string[]) =>
          propsoff(scratch.path, [
            'board-text',
            'racer.craft',
            '--board',
            board,
            '--changed',
            '--record',
            ...more,
          ]);
        assert.match(hand().stderr, /There is no racer\.craft\.handed\.json/);
        assert.match(hand().stderr, /^0 settings/m);
        scratch.write(
          'racer.craft',
          files['racer.craft'].replace('tilt-limit = 40 deg', 'tilt-limit = 35 deg'),
        );
        const { stdout, stderr } = hand();
        assert.match(stderr, /^1 setting /m);
        assert.match(stdout, /35/);
      }),
    );
  });
}

describe('the board’s own text on the command line', () => {
  const listing = [
    '### settings of the craft',
    'quiet/first-cut := 225',
    'quiet/second-cut := 400',
    'motors/idle-share := 65',
    'motors/steps-of-idle := 3',
    'lamp/colour := green',
    'lamp/blinks := yes',
  ].join('\n');

  it('of an unknown form is learned, and the profile serves from then on', () =>
    withScratch({ ...files, 'listing.txt': listing }, async ({ path }) => {
      const learned = propsoff(path, [
        'learn',
        'listing.txt',
        '--name',
        'gull',
        '--confirm',
        'motors/idle-share=motor.idle',
        '--confirm',
        'quiet/first-cut=control.feedforward-cutoff',
      ]);
      assert.equal(learned.status, 0, learned.stderr);
      mkdirSync(join(path, 'boards'));
      writeFileSync(join(path, 'boards', 'gull.json'), learned.stdout);
      assert.equal(propsoff(path, ['check', 'racer.craft']).status, 0);
      const { stdout } = propsoff(path, ['board-text', 'racer.craft', '--board', 'gull']);
      assert.match(stdout, /motors\/idle-share := 60\n/);
      writeFileSync(join(path, 'back.txt'), stdout);
      const proof = propsoff(path, ['prove', 'racer.craft', 'back.txt', '--board', 'gull']);
      assert.equal(proof.status, 1, 'most of the racer has no name on this board');
      assert.match(proof.stdout, /^not compared: /);
      assert.match(proof.stdout, / [12] settings? equal, 0 different, 0 missing/);
      const read = propsoff(path, ['read', 'listing.txt', '--board', 'gull']);
      assert.match(read.stdout, /6\.5 %/);
    }));

  it('of an unknown form is learned with how it counts, and told what each value comes to', () =>
    withScratch({ ...files, 'listing.txt': listing }, async ({ path }) => {
      const said = (...words: readonly string[]) =>
        propsoff(path, ['learn', 'listing.txt', '--name', 'gull', ...words]);
      const { status, stdout, stderr } = said(
        '--confirm',
        'quiet/first-cut=gyro.filter.1.cutoff unit Hz scale 0.1 step 0.1 Hz',
        '--confirm',
        'quiet/second-cut=gyro.filter.2.cutoff',
        '--confirm',
        'lamp/blinks=arming.beep',
        '--confirm',
        'lamp/colour=gyro.filter.1.kind',
        '--role',
        'motors/steps-of-idle=control.roll.proportional',
      );
      assert.equal(status, 0, stderr);
      assert.match(
        stderr,
        /^taken: quiet\/first-cut: 225 is 22\.5 Hz, and usual is 30 Hz to 1 kHz \(gyro\.filter\.1\.cutoff; you say so\)$/m,
      );
      assert.match(
        stderr,
        /^taken: quiet\/second-cut: 400 is 40 Hz, which is usual \(gyro\.filter\.2\.cutoff; others of its kind are counted so\)$/m,
      );
      assert.match(stderr, /^taken: lamp\/blinks: yes is on \(arming\.beep; /m);
      assert.match(
        stderr,
        /^not taken: lamp\/colour as gyro\.filter\.1\.kind: nobody has said which word of it “green” is$/m,
      );
      assert.match(
        stderr,
        /^by its role: motors\/steps-of-idle for control\.roll\.proportional, without a figure: as you say$/m,
      );
      assert.match(
        stdout,
        /"name": "second-cut", "means": "gyro\.filter\.2\.cutoff", "counts": \{"unit":"Hz","scale":10,/,
      );
      assert.match(stdout, /"name": "steps-of-idle", "role": "control\.roll\.proportional" \}/);
    }));

  it('of an unknown form is not learned where what is said of it is wrong', () =>
    withScratch({ 'listing.txt': listing }, async ({ path }) => {
      for (const [words, message] of [
        [
          ['--confirm', 'quiet/first-cut=gyro.filter.1.cutoff unit V'],
          '--confirm: "unit": "V" is not a frequency, in "quiet/first-cut=gyro.filter.1.cutoff unit V"',
        ],
        [
          ['--role', 'motors/idle-share=motor.idel'],
          '--role: there is no parameter motor.idel, in "motors/idle-share=motor.idel"',
        ],
        [['--port', 'ports/1'], '--port takes "setting=port", not "ports/1"'],
        [
          ['--port-word', 'rx=motor.idle'],
          '--port-word: "motor.idle" names no port; receiver.port does, or say "unused"',
        ],
      ] as const) {
        const { status, stdout, stderr } = propsoff(path, ['learn', 'listing.txt', ...words]);
        assert.deepEqual([status, stdout, stderr.split('\n')[0]], [2, '', `propsoff: ${message}`]);
      }
    }));

  it('whose profile has a fault says so wherever it is named, and check tells the fault', () =>
    withScratch(
      {
        ...files,
        'racer.craft': files['racer.craft'].replace('heron', 'tern'),
        'boards/tern.json': '{ "name": "tern", "hardware": { "motorOutputs": 0 } }',
        'back.txt': '',
      },
      async ({ path }) => {
        for (const words of [
          ['board-text', 'racer.craft'],
          ['prove', 'racer.craft', 'back.txt'],
        ])
          assert.equal(
            propsoff(path, words).stderr,
            'propsoff: the profile of "tern" has problems: propsoff check --board tern tells them\n',
          );
        const { stdout, status } = propsoff(path, ['check', 'racer.craft']);
        assert.match(stdout, /^boards\/tern\.json:1:49 must-fix addition\/shape .* more than 0\./m);
        assert.match(
          stdout,
          /^racer\.craft:\d+:\d+ risk wire\/board-faulty The profile of tern has a fault/m,
        );
        assert.equal(status, 1);
      },
    ));

  it('is checked like a script, in its own words and at its own places', () =>
    withScratch(
      {
        'a.boardtext':
          'heron listens.\nin radio:\nreceiver port is uart2;\nreceivr link is crsf;\nin reports:\ntelemetry port is uart2;\nheron has heard 3 settings.\n',
      },
      async ({ path }) => {
        const { status, stdout } = propsoff(path, ['check']);
        assert.equal(status, 1);
        assert.match(stdout, /^a\.boardtext:4:1 risk board\/unknown-setting .*receiver link/m);
        assert.match(stdout, /^a\.boardtext:6:19 must-fix wire\/port-shared /m);
        const { files: told } = JSON.parse(propsoff(path, ['check', '--json', 'a.boardtext']).stdout);
        assert.deepEqual(told[0].counts, { 'must-fix': 1, risk: 1, note: 0, tidy: 0 });
        const shared = told[0].findings.find(({ id }: { id: string }) => id === 'wire/port-shared');
        assert.deepEqual(shared.range, {
          start: { line: 5, character: 18 },
          end: { line: 5, character: 23 },
        });
      },
    ));

  it('of no board that is known says so, and is never formatted', () =>
    withScratch({ 'a.boardtext': 'who knows\n' }, async ({ path }) => {
      assert.match(propsoff(path, ['check']).stdout, /a\.boardtext:1:1 \S+ board\/no-profile/);
      assert.equal(propsoff(path, ['format']).status, 2);
      assert.equal(readFileSync(join(path, 'a.boardtext'), 'utf8'), 'who knows\n');
    }));

  it('is held back by must-fix findings, and goes out with a reason that stands in it', () =>
    withScratch(
      { ...files, 'racer.craft': files['racer.craft'].replace(/^poles( +)= 12/m, 'poles$1= 13') },
      async ({ path }) => {
        const held = propsoff(path, ['board-text', 'racer.craft']);
        assert.deepEqual([held.status, held.stdout], [1, '']);
        assert.match(held.stderr, /must-fix/);
        const sent = propsoff(path, ['board-text', 'racer.craft', '--despite', 'bench test']);
        assert.equal(sent.status, 0);
        assert.match(sent.stdout, /In spite of 1 must-fix finding: bench test/);
      },
    ));

  for (const args of [
    ['board-text'],
    ['board-text', 'racer.craft', '--board', 'swift'],
    ['board-text', 'nowhere.craft'],
    ['read', 'nowhere.txt'],
    ['prove', 'racer.craft'],
    ['prove', 'racer.craft', 'nowhere.txt'],
    ['learn'],
    ['check', 'racer.craft', '--board', 'swift'],
  ]) {
    it(`refuses "${args.join(' ')}" in one line`, () =>
      withScratch(files, async ({ path }) => {
        const { status, stderr, stdout } = propsoff(path, args);
        assert.deepEqual([status, stdout], [2, '']);
        assert.match(stderr, /^propsoff: [^\n]+\n$/);
      }));
  }

  it('never follows a record or a profile out of the folder of the script', () =>
    withScratch(files, async ({ path }) => {
      cpSync(join(demo, 'boards'), join(path, 'elsewhere'), { recursive: true });
      const { status, stderr } = propsoff(path, [
        'board-text',
        'racer.craft',
        '--board',
        '../elsewhere/finch',
      ]);
      assert.equal(status, 2);
      assert.match(stderr, /there is no board/);
      assert.equal(existsSync(join(path, 'racer.craft.handed.json')), false);
    }));
});
