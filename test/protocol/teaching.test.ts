import assert from 'node:assert/strict';
import { join } from 'node:path';
import { propsoff as run } from '../support/command-line';
import { type Scratch, withScratch } from '../support/scratch';

const gannet = `welcome to the good ship gannet
harbour lamp ~> 40  (0 to 100)
harbour rope ~> 12.5
quay lamp ~> 60  (0 to 100)
quay crane ~> off
call sign ~> "Mossy"
beeper @@ loud
horn @@ quiet
DECK ::
hull ~> 7
`;

function propsoff({ path }: Scratch, ...args: string[]) {
  return run(args, { cwd: path });
}

/** A board of which all that its listing does not show has been said. */
function withGannet(run: (scratch: Scratch) => void) {
  return () =>
    withScratch(
      { 'gannet.boardtext': gannet, 'my.craft': 'include "gannet.boardtext"\n[own]\n"harbour lamp" = 55\n' },
      async (scratch) => {
        const { status, stdout, stderr } = propsoff(
          scratch,
          ...['learn', 'gannet.boardtext', '--name', 'gannet', '--command', 'tell harbour lamp to be 40!'],
          ...['--line', '1=comment', '--line', '7=setting', '--line', '9=heading'],
        );
        assert.equal(status, 0, stderr);
        assert.match(
          stderr,
          /^8 settings in 2 groups were found\. 100 % of the lines were understood, 0 were not\.$/m,
        );
        scratch.write('boards/gannet.json', stdout);
        run(scratch);
      },
    );
}

const commands = `tell harbour lamp to be 55!
tell harbour rope to be 12.5!
tell quay lamp to be 60!
tell quay crane to be off!
tell call sign to be "Mossy"!
tell beeper to be loud!
tell horn to be quiet!
tell hull to be 7!
`;

describe('what a listing does not show by itself, said on the command line', () => {
  it(
    'is checked and handed over as the board takes it, and proved by what it lists',
    withGannet((scratch) => {
      assert.match(propsoff(scratch, 'check', 'gannet.boardtext').stdout, / 0 must-fix, 0 risk, 0 note,/);
      const written = propsoff(scratch, 'board-text', 'my.craft');
      assert.equal(written.stdout, commands, written.stderr);
      scratch.write('captured.txt', gannet.replace('~> 40', '~> 55'));
      const proved = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.equal(proved.status, 0, proved.stdout);
      scratch.write('captured.txt', gannet.replace('~> 40', '~> 55').replace('quiet', 'loud'));
      const other = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.match(
        other.stdout,
        /^captured\.txt:8 horn .* different: the script says quiet, the board holds loud$/m,
      );
    }),
  );

  it(
    'is asked for where half is missing, and said once or for good',
    withGannet((scratch) => {
      scratch.write('captured.txt', 'harbour lamp ~> 55\nquay crane ~> off\n');
      const asked = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.match(asked.stdout, /^6 settings are missing, which is about half: does this board list only/m);
      scratch.write('captured.txt', 'attic stair ~> 55\ncellar door ~> off\n');
      const other = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.match(
        other.stdout,
        /^None of the 8 settings of the script stands in the capture, which holds 2/m,
      );
      assert.doesNotMatch(other.stdout, /about half/);
      scratch.write('captured.txt', 'harbour lamp ~> 55\nquay crane ~> off\n');
      const said = propsoff(scratch, 'prove', 'my.craft', 'captured.txt', '--omits-defaults');
      assert.match(
        said.stdout,
        /^not compared: own\."harbour rope": the listing leaves out what is at its default/m,
      );
      assert.doesNotMatch(said.stdout, /missing, which/);
      const learned = propsoff(scratch, 'learn', 'gannet.boardtext', '--omits-defaults', '--name', 'gannet');
      scratch.write('boards/gannet.json', learned.stdout);
      assert.doesNotMatch(propsoff(scratch, 'prove', 'my.craft', 'captured.txt').stdout, /missing, which/);
    }),
  );

  it(
    'names the setting that plays the part of what the script sets, where nobody knows how it is counted',
    withGannet((scratch) => {
      const learned = propsoff(
        scratch,
        ...['learn', 'gannet.boardtext', '--name', 'gannet', '--line', '1=comment', '--line', '7=setting'],
        ...['--line', '9=heading', '--role', 'DECK/hull=motor.idle'],
      );
      assert.equal(learned.status, 0, learned.stderr);
      scratch.write('boards/gannet.json', learned.stdout);
      scratch.write('my.craft', 'include "gannet.boardtext"\n[motor]\nidle = 6 %\n');
      scratch.write('captured.txt', gannet);
      const { status, stdout } = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.equal(status, 1);
      assert.match(
        stdout,
        /^not compared: .*\(motor\.idle\): it is DECK hull of the board, and nobody has said how/,
      );
    }),
  );

  it(
    'shows an echo of what was pasted for what it is',
    withGannet((scratch) => {
      scratch.write('captured.txt', commands);
      const { status, stdout, stderr } = propsoff(scratch, 'prove', 'my.craft', 'captured.txt');
      assert.deepEqual([status, stdout], [2, '']);
      assert.match(stderr, /only what was typed or pasted/);
    }),
  );

  it(
    'is known in a profile beside the text from any other folder',
    withGannet((scratch) => {
      scratch.write('elsewhere/note.txt', '');
      const folder = join(scratch.path, 'elsewhere');
      assert.equal(run(['board-text', '../my.craft'], { cwd: folder }).stdout, commands);
      assert.match(
        run(['check', '../gannet.boardtext'], { cwd: folder }).stdout,
        / 0 must-fix, 0 risk, 0 note,/,
      );
      assert.match(run(['read', '../gannet.boardtext'], { cwd: folder }).stdout, /^profile = gannet$/m);
      assert.equal(run(['board-text', join(scratch.path, 'my.craft')], { cwd: '/' }).stdout, commands);
    }),
  );

  it('is refused with what to do where it fits nothing', () =>
    withScratch({ 'gannet.boardtext': gannet }, async (scratch) => {
      const learn = (...more: string[]) => propsoff(scratch, 'learn', 'gannet.boardtext', ...more);
      for (const [args, why] of [
        [['--line', '9=knob'], /--line takes the number of a line and what it is, such as 12=setting/],
        [['--line', '40=comment'], /--line 40=comment: There is nothing in this line\./],
        [
          ['--line', '1=setting'],
          /--line 1=setting: .* Say --line '1=setting <its value, or its name=value>'\./,
        ],
        [['--command', 'tell harbour lamp to be 80!'], /type what would set it to 40\./],
        [['--name', 'con'], /some systems take no file of the name "con"/],
      ] as const) {
        const { status, stdout, stderr } = learn(...args);
        assert.deepEqual([status, stdout], [2, '']);
        assert.match(stderr, why);
      }
      assert.match(learn('--name', 'gannet-2').stdout, /"name": "gannet-2"/);
    }));
});
