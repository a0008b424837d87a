import assert from 'node:assert/strict';
import { propsoff as run } from '../support/command-line';
import { type Scratch, withScratch } from '../support/scratch';

const plover = `arm low ....... 1700   (1000 to 2200)
arm high ...... 2050   (1000 to 2200)
arm stick ..... 5
tilt limit .... 45     (10 to 80)
`;
const arm = ['--except', 'switch.arm.channel', '--except', 'switch.arm.on'];

/** A craft that includes the text of a board of which nobody has said anything; its profile is learned. */
function withPlover(run: (scratch: Scratch) => void) {
  return () =>
    withScratch(
      {
        'plover.boardtext': plover,
        'my.craft': 'include "plover.boardtext"\n[switch.arm]\nchannel = 5\non = 1700..2050 us\n',
      },
      async (scratch) => {
        const learned = propsoff(scratch, 'learn', 'plover.boardtext', '--name', 'plover');
        assert.equal(learned.status, 0, learned.stderr);
        scratch.write('boards/plover.json', learned.stdout);
        run(scratch);
      },
    );
}

function propsoff({ path }: Scratch, ...args: string[]) {
  return run(args, { cwd: path });
}

function proof(scratch: Scratch, capture: string, ...more: string[]) {
  scratch.write('captured.txt', capture);
  return propsoff(scratch, 'prove', 'my.craft', 'captured.txt', ...more);
}

const wrong = plover.replace('1700', '1300');

describe('a board of which nobody has said what its settings mean', () => {
  it(
    'is never proved while nobody can tell where it arms',
    withPlover((scratch) => {
      const { status, stdout } = proof(scratch, plover);
      assert.equal(status, 1);
      assert.match(stdout, /^not compared: [^\n]*switch\.arm/);
      assert.match(stdout, /, 4 settings equal, 0 different,/);
    }),
  );

  it(
    'tells first that the arm switch was not compared, and then the bare setting that is another one',
    withPlover((scratch) => {
      const { status, stdout } = proof(scratch, wrong);
      assert.equal(status, 1);
      assert.match(stdout, /^not compared: [^\n]*switch\.arm/);
      assert.match(
        stdout,
        /^captured\.txt:1 arm low \(own\."arm low"\) different: the script says 1700, the board holds 1300$/m,
      );
    }),
  );

  it(
    'is told where what looks like a range beside a value is another one, for it may be a switch’s',
    withPlover((scratch) => {
      const { status, stdout } = proof(scratch, plover.replace('(10 to 80)', '(10 to 60)'), ...arm);
      assert.equal(status, 1);
      assert.match(
        stdout,
        /^captured\.txt:4 tilt limit \(own\."tilt limit"\) says 10 to 60 beside the same value, and said 10 to 80 before$/m,
      );
      // What a browser makes of spaces is no other word.
      const spaced = proof(scratch, plover.replaceAll(' ', '\u00a0'), ...arm);
      assert.equal(spaced.status, 0, spaced.stdout);
    }),
  );

  it(
    'is proved where the arm switch is knowingly left, and the report says so',
    withPlover((scratch) => {
      const right = proof(scratch, plover, ...arm);
      assert.equal(right.status, 0, right.stdout);
      assert.match(right.stderr, /^An echo of what was pasted would look the same: /m);
      assert.match(right.stdout, /2 knowingly left: switch\.arm\.channel, switch\.arm\.on\.$/m);
      assert.equal(proof(scratch, wrong, ...arm).status, 1);
      assert.equal(proof(scratch, plover, '--except', 'switch.beeper.on').status, 2);
    }),
  );

  it(
    'proves nothing by what was typed, and nothing by a text without settings',
    withPlover((scratch) => {
      for (const capture of ['plover> arm low 1700\nplover> arm high 2050\n', '', '\n\n']) {
        const { status, stdout, stderr } = proof(scratch, capture, ...arm);
        assert.deepEqual([status, stdout], [2, ''], stderr);
        assert.match(stderr, /^propsoff: captured\.txt: [^\n]+\n$/);
      }
    }),
  );

  it(
    'gets its own text back, then only what changed, and is told what it keeps',
    withPlover((scratch) => {
      const first = propsoff(scratch, 'board-text', 'my.craft', '--record');
      assert.equal(first.stdout, plover);
      assert.match(first.stderr, /^2 of \d+ not handed over: [^\n]*\(switch\.arm\.channel\)/m);
      scratch.write('my.craft', 'include "plover.boardtext"\n[own]\n"tilt limit" = 40\n');
      const second = propsoff(scratch, 'board-text', 'my.craft', '--changed');
      assert.equal(second.stdout, 'tilt limit .... 40     (10 to 80)\n');
      scratch.write('plover.boardtext', plover.replace(/^arm stick.*\n/m, ''));
      const third = propsoff(scratch, 'board-text', 'my.craft', '--changed');
      assert.match(third.stderr, /^No longer set: arm stick; the board keeps 5\.$/m);
    }),
  );

  it(
    'is read by the profile that has the name of its file',
    withPlover((scratch) => {
      scratch.write('plover.txt', 'arm stick ..... 6\n');
      assert.match(propsoff(scratch, 'read', 'plover.txt').stdout, /^profile = plover$/m);
    }),
  );
});

describe('more settings than any board has', () => {
  it('are refused with a sentence that says how many are taken', () =>
    withScratch({ 'all.txt': lines(100_001) }, async (scratch) => {
      for (const command of ['read', 'learn']) {
        const { stdout, stderr, status } = propsoff(scratch, command, 'all.txt');
        assert.equal(stdout, '');
        assert.notEqual(status, 0);
        assert.match(stderr, /more than 100000 settings/);
      }
    }));

  it('and texts of more than 10 MB are told at their include, and hold back a proof and a hand-over', () =>
    withScratch(
      {
        'all.boardtext': lines(100_001),
        'long.boardtext': `${lines(3)}# ${'no board prints so much. '.repeat(420_000)}\n`,
      },
      async (scratch) => {
        for (const [name, why] of [
          ['all', /the text holds more than 100000 settings/],
          ['long', /it is longer than 10 MB/],
        ] as const) {
          scratch.write('my.craft', `include "${name}.boardtext"\n[craft]\nname = "Mossy"\n`);
          const checked = propsoff(scratch, 'check', 'my.craft');
          assert.match(checked.stdout, /^my\.craft:1:9 must-fix line\/include-too-long /);
          assert.match(checked.stdout, why);
          for (const args of [
            ['prove', 'my.craft', 'my.craft'],
            ['board-text', 'my.craft'],
          ]) {
            const { stdout, stderr, status } = propsoff(scratch, ...args);
            assert.deepEqual([stdout, status], ['', 2]);
            assert.match(stderr, why);
            assert.match(stderr, /Of a board's text, 100,000 settings and 10 MB are the most\.$/m);
          }
        }
      },
    ));
});

function lines(count: number): string {
  return Array.from({ length: count }, (_, index) => `setting ${index} ... ${index % 977}\n`).join('');
}
