import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { renameSync, symlinkSync } from 'node:fs';
import { built } from '../support/built';
import { plainEnvironment } from '../support/command-line';
import { type Scratch, withScratch } from '../support/scratch';

/** `propsoff check --watch` as a person sees it: what it says, check by check. */
class Watch {
  private readonly child: ChildProcess;
  private told = '';
  private seen = 0;
  private wake = () => {};

  constructor(scratch: Scratch, args: readonly string[]) {
    const all = [built('propsoff.js'), 'check', '--watch', ...args];
    this.child = spawn(process.execPath, all, { cwd: scratch.path, env: plainEnvironment() });
    for (const stream of [this.child.stdout, this.child.stderr]) {
      stream?.on('data', (data) => {
        this.told += String(data);
        this.wake();
      });
    }
  }

  /** What is said until it waits again. */
  async next(): Promise<string> {
    const mark = 'Watching for changes; Ctrl+C ends it.\n';
    for (;;) {
      const end = this.told.indexOf(mark, this.seen);
      if (end >= 0) {
        const said = this.told.slice(this.seen, end);
        this.seen = end + mark.length;
        return said;
      }
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }

  /** Until it says something about this; a save may be seen in two steps. */
  async until(wanted: RegExp): Promise<string> {
    for (;;) {
      const said = await this.next();
      if (wanted.test(said)) return said;
    }
  }

  async end(signal: NodeJS.Signals): Promise<number | null> {
    const ended = new Promise<number | null>((resolve) => this.child.once('exit', resolve));
    this.child.kill(signal);
    return ended;
  }
}

async function watching(
  files: Readonly<Record<string, string>>,
  args: readonly string[],
  run: (watch: Watch, scratch: Scratch) => Promise<void>,
) {
  await withScratch(files, async (scratch) => {
    const watch = new Watch(scratch, args);
    try {
      await run(watch, scratch);
    } finally {
      await watch.end('SIGKILL');
    }
  });
}

const wrong = '[arming]\ntilt-limt = 60 deg\n';
const right = '[arming]\ntilt-limit = 60 deg\n';

describe('check --watch', () => {
  it('checks again when a script changes, and ends with what the last check came to', () =>
    withScratch({ 'a.craft': wrong }, async (scratch) => {
      const watch = new Watch(scratch, []);
      assert.match(await watch.next(), /a\.craft:2:1 must-fix[\s\S]*1 must-fix/);
      scratch.write('a.craft', right);
      assert.match(await watch.until(/ 0 must-fix/), /^\nChanged: a\.craft\n/);
      assert.equal(await watch.end('SIGINT'), 0);
    }));

  it('ends with 1 while something is wrong, on either signal', () =>
    withScratch({ 'a.craft': wrong }, async (scratch) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) {
        const watch = new Watch(scratch, ['a.craft']);
        await watch.next();
        assert.equal(await watch.end(signal), 1);
      }
    }));

  it('sees scripts that come, go, and are saved by another file’s being renamed', () =>
    watching({ 'fleet/a.craft': right }, ['fleet'], async (watch, scratch) => {
      assert.match(await watch.next(), /^1 script checked/m);
      scratch.write('fleet/new/b.craft', wrong);
      await watch.until(/^fleet\/new\/b\.craft:2:1 must-fix[\s\S]*^2 scripts checked/m);
      scratch.write('fleet/a.tmp', wrong);
      renameSync(scratch.file('fleet/a.tmp'), scratch.file('fleet/a.craft'));
      await watch.until(/^fleet\/a\.craft:2:1 must-fix/m);
      scratch.remove('fleet/new');
      await watch.until(/^1 script checked/m);
      scratch.remove('fleet/a.craft');
      await watch.until(/^propsoff: there is no craft script here/m);
      scratch.write('fleet/a.craft', right);
      await watch.until(/ 0 must-fix/);
    }));

  it('sees what is kept beside a board’s text', () => {
    const files = {
      'wren.boardtext': 'wake/arming-tilt-most <- 180\n',
      'my.craft': 'include "wren.boardtext"\nboard.profile = wren\n',
    };
    return watching(files, ['my.craft'], async (watch, scratch) => {
      assert.match(await watch.next(), /risk safe\/arms-at-any-tilt/);
      const accepted = [
        {
          setting: ['wake', 'arming-tilt-most'],
          check: 'safe/arms-at-any-tilt',
          reason: 'starts from a hook',
        },
      ];
      scratch.write('wren.boardtext.board.json', JSON.stringify({ version: 1, accepted }));
      await watch.until(/note safe\/arms-at-any-tilt/);
    });
  });

  it('sees what a script includes, in other folders as well, and an include that was missing', () =>
    watching({ 'race/a.craft': 'include "../habits.craft"\n' }, ['race/a.craft'], async (watch, scratch) => {
      assert.match(await watch.next(), /line\/include-missing/);
      scratch.write('habits.craft', 'include "more/rules.craft"\n');
      scratch.write('more/rules.craft', right);
      await watch.until(/^1 script checked: 0 must-fix/m);
      scratch.write('more/rules.craft', wrong);
      await watch.until(/must-fix/);
    }));

  it('sees what the folder adds, from the day on that there is something', () =>
    watching({ 'a.craft': '[buzzer]\nloud = on\n' }, ['a.craft'], async (watch, scratch) => {
      assert.match(await watch.next(), /1 must-fix/);
      const added = { kind: 'flag', name: 'buzzer.loud', title: 'A loud buzzer' };
      const words = { summary: 'Whether the buzzer calls as loudly as it can.' };
      scratch.write('propsoff/own.json', JSON.stringify({ parameters: [{ ...added, ...words }] }));
      assert.match(await watch.until(/^1 script checked: 0 must-fix/m), /^\nChanged: propsoff/);
      scratch.write('propsoff/own.json', '{ "gears": 3 }');
      await watch.until(/addition\/shape/);
    }));

  it('leaves alone what no check reads', () =>
    watching({ 'a.craft': right }, [], async (watch, scratch) => {
      await watch.next();
      scratch.write('notes.txt', 'x');
      scratch.write('node_modules/n.craft', wrong);
      scratch.write('.hidden/h.craft', wrong);
      scratch.write('a.craft', wrong);
      assert.match(await watch.until(/must-fix/), /^\nChanged: a\.craft\n/);
    }));

  it('does not begin where there is nothing to check', () =>
    withScratch({}, async (scratch) => {
      const watch = new Watch(scratch, ['nowhere/*.craft']);
      assert.match(await watch.next(), /no file matches this pattern/);
      assert.equal(await watch.end('SIGINT'), 2);
    }));

  it('watches the rest where a link leads in a circle, and tells it', () =>
    withScratch({ 'a.craft': '[gyro]\n' }, async (scratch) => {
      symlinkSync('circle.craft', scratch.file('circle.craft'));
      const watch = new Watch(scratch, ['a.craft']);
      try {
        assert.match(await watch.next(), /^propsoff: not all is watched: its links lead in a circle$/m);
        scratch.write('a.craft', '[gyro]\nwobble = 1\n');
        await watch.until(/a\.craft:2:1 must-fix/);
      } finally {
        await watch.end('SIGINT');
      }
    }));
});
