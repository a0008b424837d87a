import { strict as assert } from 'node:assert';
import { profileOf } from '../../../server/src/board/profile/profile';
import { fixTitle } from '../../../server/src/checks/report/render';
import { checkedScript } from '../../../server/src/cli/report/checked-file';
import { CraftView } from '../../../server/src/craft/view';
import { boardRenderer } from '../../../server/src/features/board/finding-words';
import { blockedText, prepareBoardText } from '../../../server/src/features/board/hand-over';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import { buildSheet } from '../../../server/src/sheet/build-sheet';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { faultyText, scriptBeside } from '../../support/faulty-board-text';
import { MemoryFiles } from '../../support/memory-files';

const craft = 'test:///work/wagtail.craft';

async function opened(script: string) {
  const fileSystem = new MemoryFiles({ 'wagtail.boardtext': faultyText });
  const workspace = new Workspace({ catalog: testCatalog, fileSystem });
  workspace.openScript(craft, script, 1);
  await workspace.settled();
  const { craft: made } = workspace.get(craft) ?? assert.fail('not open');
  return {
    workspace,
    view: new CraftView(made, made.packs()[0] ?? null),
    findings: workspace.findings(craft),
  };
}

/** Paths that the board holds and that no name of the board stands before. */
function bare(text: string): readonly string[] {
  return [...text.matchAll(/(\S+ \()?\b([a-z]+(?:\.[a-z0-9-]+)+)\b/g)]
    .filter(([, before, path = '']) => before === undefined && held.has(path))
    .map(([, , path = '']) => path);
}

const wren = profileOf(testCatalog.board('wren') ?? assert.fail('no wren'));
const held = new Set(wren?.rows.flatMap(({ setting }) => setting.means ?? []));

describe('what is found in a board’s text, told in the script that includes it', () => {
  it('has the board’s names with their paths, and its numbers', async () => {
    const { workspace, findings } = await opened(scriptBeside);
    const around = {
      pathFor: (uri: string) => uri.split('/').at(-1) ?? '',
      layer: (uri: string) => workspace.layer(uri),
      catalog: testCatalog,
    };
    const told = checkedScript(
      'wagtail.craft',
      workspace.get(craft)?.craft ?? assert.fail(),
      findings,
      around,
      true,
    );
    const of = (id: string) => told.findings.find((one) => one.id === id) ?? assert.fail(id);
    const uneven = of('tune/control-rate-uneven');
    assert.equal(
      uneven.message,
      'The control rate of 1500 (1.5 kHz) does not go evenly into the gyro rate of 2000 (2 kHz): 1.33 samples for each step.',
    );
    assert.deepEqual(uneven.fixes.map(({ title }) => title).slice(0, 2), [
      'Write 2000 (2 kHz), in wagtail.boardtext',
      'Write 2 kHz, in this script',
    ]);
    assert.deepEqual(
      uneven.related.map(({ message }) => message),
      ['Set here: loop-rate.', 'The rate of the gyro.'],
    );
    assert.match(
      of('tune/tones-need-feedback').advice,
      /^Set motors-report-speed \(esc\.speed-feedback\) to yes, /,
    );
    const atInclude = told.findings.filter(({ range }) => range.start.line === 0);
    assert.ok(atInclude.length > 40, `only ${atInclude.length}`);
    for (const { message, advice } of atInclude)
      assert.deepEqual([message, bare(message + advice)], [message, []]);
  });

  it('holds a hand-over back in the same words', async () => {
    const { workspace, findings } = await opened(scriptBeside);
    const text = blockedText(findings, workspace).join('\n');
    assert.match(text, /obey\/range-outside-ends: lamps is on from 2050 us to 2150 us/);
    assert.match(
      text,
      /tune\/tones-need-feedback: gyro-cleaner-2 \(gyro\.filter\.2\) is to follow the motors/,
    );
  });

  it('stands in the build sheet and on the bench card in the same words', async () => {
    const { workspace, view, findings } = await opened(scriptBeside);
    const telling = boardRenderer(workspace);
    const advice = /Set motors-report-speed \(esc\.speed-feedback\) to yes/;
    const sheet = buildSheet(view.craft, findings, view.pack, null, telling);
    assert.match(JSON.stringify(sheet.parts), advice);
    assert.match(JSON.stringify(benchCard(view.craft, findings, view.craft.packs(), telling)), advice);
  });

  it('says nothing otherwise of what stands in the script itself', async () => {
    const { findings } = await opened(
      scriptBeside.replace('poles = 12', 'poles = 12\nidle = 5 %\n[gyro]\nrate = 3 kHz'),
    );
    const fixes = findings.flatMap((one) =>
      one.place.line.text === 'rate = 3 kHz' ? one.fixes.map(fixTitle) : [],
    );
    assert.ok(fixes.length > 0);
    for (const title of fixes) assert.doesNotMatch(title, /\(|wagtail/);
  });
});

describe('what is told of a hand-over', () => {
  it('names what was rounded and what was left out as the board does, with its path', async () => {
    const { view } = await opened(
      '[craft]\nname = "P"\n[board]\nprofile = wren\n[control.roll]\nproportional = 0.05123 %/(deg/s)\n' +
        '[gyro.filter.1]\ncutoff = 120.3 Hz\n[stick.roll]\ncurve = 3\n',
    );
    const { report } = prepareBoardText({
      profile: wren,
      captured: null,
      view,
      findings: [],
      since: null,
      reason: null,
    });
    const lines = report.filter((line) => /^(Rounded|Not handed over)/.test(line));
    assert.deepEqual(lines, [
      'Not handed over: hands roll-curve-at-0 to hands roll-curve-at-100 (stick.roll.curve): its value can’t be read.',
      'Rounded: calm gyro-cleaner-1-corner (gyro.filter.1.cutoff) is 120.3 Hz; the board will hold 120 Hz.',
      'Rounded: nerve roll-proportional-gain (control.roll.proportional) is 0.05123 %/(deg/s); the board will hold 512 (0.0512 %/(deg/s)).',
    ]);
  });
});
