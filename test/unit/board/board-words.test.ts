import { strict as assert } from 'node:assert';
import { scriptTextOf } from '../../../server/src/board/layer/layer';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { profileOf } from '../../../server/src/board/profile/profile';
import type { ReportedFinding } from '../../../server/src/cli/report/checked-file';
import { boardAcceptance } from '../../../server/src/features/board/acceptance';
import { boardCompletion } from '../../../server/src/features/board/completion';
import { boardFix } from '../../../server/src/features/board/fix';
import { boardHover } from '../../../server/src/features/board/hover';
import { boardWords } from '../../../server/src/features/board/words/board-words';
import { codeActions } from '../../../server/src/features/code-actions';
import { completionDetails } from '../../../server/src/features/completion/details';
import { plainText } from '../../../server/src/features/markdown';
import { rangeOf } from '../../../server/src/features/range';
import { testCatalog } from '../../support/catalog';
import { applied, checked, uri } from '../../support/checked-board';
import { faultyText } from '../../support/faulty-board-text';

function textsOf({ message, advice, related, fixes }: ReportedFinding): readonly string[] {
  const inFixes = fixes.flatMap(({ title, edits }) => [title, ...edits.map(({ newText }) => newText)]);
  return [message, advice, ...related.map((one) => one.message), ...inFixes];
}

/** Words with dots between that are a path of the catalogue, or lead to some. */
function pathsIn(text: string): readonly string[] {
  return [...text.matchAll(/[a-z][a-z0-9-]*(?:\.[a-z0-9<][a-z0-9<>-]*)+(?! in the script)(?![\w.-])/g)]
    .map(([path]) => path)
    .filter(
      (path) => testCatalog.parameter(path) !== undefined || testCatalog.parametersUnder(path).length > 0,
    );
}

/** A number with its unit as a script has it, where the board counts it otherwise and its number is not before it. */
function isScriptValue(text: string, said: string, raw: string): boolean {
  const at = text.indexOf(said);
  if (at < 0 || raw === said.split(' ')[0]) return false;
  return !text.slice(0, at).endsWith(`${raw} (`);
}

describe('what is found in a board’s text', () => {
  it('is told without a path of a script, but for what stands in the script', async () => {
    const { findings, included } = await checked(faultyText);
    assert.ok(findings.length > 50, `only ${findings.length} findings`);
    assert.ok(included.length > 0);
    for (const text of [...findings.flatMap(textsOf), ...included]) assert.deepEqual(pathsIn(text), [], text);
  });

  it('is told with the values that stand there', async () => {
    const { layer, findings } = await checked(faultyText);
    for (const finding of findings)
      for (const [index, { script, spans }] of layer.lines.entries()) {
        const setting = layer.settings[index];
        if (setting?.at.name.start.line !== finding.range.start.line || spans === null) continue;
        const said = script.slice(spans.value.start, spans.value.end);
        if (!/^-?[\d.]+ \S+$/.test(said)) continue;
        for (const text of textsOf(finding)) assert.ok(!isScriptValue(text, said, setting.value), text);
      }
  });

  it('reads as the board says it', async () => {
    const { findings } = await checked(faultyText);
    const told = (id: string) => {
      const { message, advice, fixes } = findings.find((one) => one.id === id) ?? assert.fail(id);
      return [message, advice, ...fixes.map(({ title }) => title)];
    };
    assert.deepEqual(told('tune/control-rate-uneven'), [
      'The control rate of 1500 (1.5 kHz) does not go evenly into the gyro rate of 2000 (2 kHz): 1.33 samples for each step.',
      'Set a control rate that divides it, such as 2000 (2 kHz) or 1000 (1 kHz).',
      'Write 2000 (2 kHz)',
      'Write 1000 (1 kHz)',
    ]);
    assert.equal(told('line/word-repeated')[0], 'nose-left stands in the list more than once.');
    assert.match(told('line/outside-usual')[1] ?? '', /a reason, in a comment above it \(~ accept …\)\.$/);
    assert.match(told('wire/receiver-supply-unusual')[1] ?? '', /wire\.receiver\.accepts in the script/);
    assert.equal(told('safe/arms-at-computer')[2], 'Turn it off: write no');
  });

  it('says which word to write as the board writes it', async () => {
    const falling = faultyText
      .replace('action-on-signal-loss <- fall', 'action-on-signal-loss <- sink')
      .replace('throttle-on-signal-loss <- 320', 'throttle-on-signal-loss <- 10');
    const { findings } = await checked(falling, false);
    const found = findings.find(({ id }) => id === 'safe/descent-falls') ?? assert.fail('not found');
    assert.equal(found.advice, 'Write a throttle a little below the hover, or choose fall if it is to fall.');
  });

  it('is explained by the names, numbers and words of the board', async () => {
    const { layer, snapshot } = await checked(faultyText);
    const told = new Map<string, string>();
    for (const [index, setting] of layer.settings.entries()) {
      const inScript = { line: index, character: layer.lines[index]?.spans?.value.start ?? 0 };
      const found = boardHover(layer, snapshot, inScript, setting.at.value.start);
      const text = plainText(found?.markdown ?? assert.fail(`nothing about ${setting.name}`));
      assert.deepEqual(pathsIn(text), [], text);
      told.set(setting.name, text);
    }
    assert.match(told.get('motors-report-speed') ?? '', /Here: no\n.*Takes yes or no\..*yes: Every command/s);
    assert.match(told.get('gyro-cleaner-1-kind') ?? '', /See also .*, derivative-cleaner-<number>-kind\./s);
    assert.match(told.get('idle-share') ?? '', /usually 15 \(1\.5 %\) to 160 \(16 %\)/);
    assert.match(told.get('arming-live-to') ?? '', /Here: 900 us to 1300 us\n.*This is its upper end\./s);
  });

  it('has words and settings offered that are described as the board calls them', async () => {
    const { layer } = await checked(faultyText);
    const words = boardWords(layer, testCatalog);
    const described = (name: string) => {
      const setting = layer.settings.find((one) => one.name === name) ?? assert.fail(name);
      return boardCompletion(layer, testCatalog, setting.at.value.start).map(({ label, subject }) => {
        const of = subject.kind === 'choice' ? subject.parameter : null;
        const details = completionDetails(testCatalog, subject);
        return [label, details === null ? '' : plainText(words.markdown(details, of)).slice(0, 20)];
      });
    };
    assert.deepEqual(described('gyro-cleaner-2-kind').slice(0, 2), [
      ['soft', 'soft: Lets the low e'],
      ['steep', 'steep: Lets the low '],
    ]);
    const names = boardCompletion(layer, testCatalog, { line: 0, character: 0 });
    assert.deepEqual(names, []);
  });
});

function writing(to: string) {
  return { title: 'Write {to}', values: { to }, set: 'control.rate' };
}

describe('a board that writes numbers in a look of its own', () => {
  it('has them so in what a fix says', () => {
    const heron = profileOf(testCatalog.board('heron') ?? assert.fail('no heron'));
    const text = ['in quiet:', 'gyro rate is 6.4;', 'in steadiness:', 'loop rate is 2.5;'].join('\n');
    const layer = new LayerReader(testCatalog, heron).read(text);
    const line = layer.lines.findIndex(({ script }) => script.startsWith('control.rate'));
    const { value } = layer.lines[line]?.spans ?? assert.fail('no loop rate');
    const range = { start: { line, character: value.start }, end: { line, character: value.end } };
    const edits = [{ uri, edits: [{ range, newText: '2 kHz' }] }];
    const fix = boardFix(layer, boardWords(layer, testCatalog), writing('2 kHz'), edits);
    assert.equal(fix?.title, 'Write 2.0 kHz');
    assert.deepEqual(
      fix.edits.map(({ newText }) => newText),
      ['2.0'],
    );
  });
});

describe('a risk in a board’s text', () => {
  const risky = 'wake/arming-tilt-most <- 180';
  const id = 'safe/arms-at-any-tilt';
  const accepted = faultyText.replace(risky, `~ accept ${id}: starts from a hook, all stand back\n${risky}`);

  it('is accepted by a comment above its setting', async () => {
    const { findings } = await checked(accepted);
    const found = findings.find((one) => one.id === id);
    assert.equal(found?.accepted, 'starts from a hook, all stand back');
    assert.equal(found.level, 'note');
  });

  it('stays accepted while its line is edited', () => {
    const profile = profileOf(testCatalog.board('wren') ?? assert.fail('no wren'));
    const reader = new LayerReader(testCatalog, profile);
    reader.read(accepted);
    const edited = accepted.replace(risky, 'wake/arming-tilt-most <- 170');
    const followed = scriptTextOf(reader.read(edited));
    assert.match(
      followed,
      /^arming\.tilt-limit = 170 deg # accept safe\/arms-at-any-tilt: starts from a hook/m,
    );
    assert.equal(followed, scriptTextOf(new LayerReader(testCatalog, profile).read(edited)));
  });

  it('is offered to be accepted so', async () => {
    const { layer, snapshot } = await checked(faultyText);
    const finding = snapshot.findings().find(({ check }) => check.id === id) ?? assert.fail(id);
    const offered = codeActions(snapshot, rangeOf(finding.place)).find(({ kind }) => kind === 'accept');
    const [edit] = offered?.edits.flatMap(({ edits }) => edits) ?? [];
    const written = boardAcceptance(layer, edit?.range.start.line ?? -1, edit?.newText ?? '');
    assert.equal(written?.newText, `~ accept ${id}: why this is fine here\n`);
    assert.equal(written.range.start.line, faultyText.split('\n').indexOf(risky));
  });

  it('has an acceptance that accepts nothing reported, and taken out', async () => {
    const stale = accepted.replace(risky, 'wake/arming-tilt-most <- 40');
    // What is unused shows only in a whole craft; a name that no check has shows anywhere.
    const misspelt = stale.replace(id, 'safe/arms-at-any-tlt');
    const { layer, findings } = await checked(misspelt);
    const found = findings.find((one) => one.id === 'line/accept-unknown') ?? assert.fail('not reported');
    assert.equal(
      layer.texts[found.range.start.line],
      misspelt.split('\n').find((line) => /tlt/.test(line)),
    );
    const [fix] = found.fixes;
    assert.ok(fix !== undefined);
    assert.ok(applied(misspelt, fix).includes(`~ accept ${id}: starts`));
    const line = layer.lines.findIndex(({ acceptance }) => acceptance !== null);
    const { script, spans } = layer.lines[line] ?? assert.fail('no line');
    const start = script.indexOf('#');
    const range = { start: { line, character: start }, end: { line, character: script.length } };
    const removal = { title: 'Remove the acceptance', values: {}, set: null };
    const out = boardFix(layer, boardWords(layer, testCatalog), removal, [
      { uri, edits: [{ range, newText: '' }] },
    ]);
    assert.ok(spans !== null && out !== null);
    const edits = out.edits.map((edit) => ({ path: uri, ...edit }));
    assert.equal(
      applied(misspelt, { title: '', edits }),
      faultyText.replace(risky, 'wake/arming-tilt-most <- 40'),
    );
  });
});
