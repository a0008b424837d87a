import assert from 'node:assert/strict';
import { fixTitle, messageOf } from '../../../server/src/checks/report/render';
import { boardEdits } from '../../../server/src/features/board/edits';
import { editsOf } from '../../../server/src/features/fix-edits';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const craft = 'test:///work/kestrel.craft';
const text = 'test:///work/kestrel.boardtext';

/** What an unknown board prints. */
const listing = [
  '== calm ==',
  'first cut ~> 225 (from 50 to 400)',
  'lamp ~> yes',
  '== wake ==',
  'spin-up ~> 6',
];

async function over(files: Readonly<Record<string, string>>, script: string) {
  const fileSystem = new MemoryFiles(files);
  const workspace = new Workspace({ catalog: testCatalog, fileSystem });
  workspace.openScript(craft, script, 1);
  await workspace.settled();
  const findings = () => workspace.findings(craft);
  const ids = () => findings().map(({ check }) => check.id);
  return { fileSystem, workspace, findings, ids };
}

const asCraft = '[craft]\nname = "Kestrel"\nmass = 212 g\n';

describe('a board’s text that a script includes', () => {
  it('is a layer of the craft, which the script overrides', async () => {
    const { workspace } = await over(
      { 'kestrel.boardtext': listing.join('\n') },
      'include "kestrel.boardtext"\n\n[own.calm]\n"first cut" = 180\n',
    );
    const craftNow = workspace.get(craft)?.craft;
    const value = (path: string) => {
      const held = craftNow?.setting(path, null)?.value;
      return held?.kind === 'bare' ? held.value : null;
    };
    assert.equal(value('own.calm."first cut"'), '180');
    assert.equal(value('own.calm.lamp'), 'yes');
  });

  it('leaves open what its board may hold: one note says how many settings have no meaning', async () => {
    const alone = await over({}, asCraft);
    const missing = (id: string) => /^(obey|safe)/.test(id);
    assert.ok(alone.ids().filter(missing).length > 1, alone.ids().join());
    const { findings, ids } = await over(
      { 'kestrel.boardtext': listing.join('\n') },
      `include "kestrel.boardtext"\n${asCraft}`,
    );
    // No board holds what lies on the craft.
    assert.deepEqual(ids().filter(missing), ['safe/nothing-to-find-it']);
    const note = findings().find(({ check }) => check.id === 'remember/meaning-unsaid');
    assert.equal(note?.values.count, '3 settings stand');
    assert.equal(note?.place.line.text, 'include "kestrel.boardtext"');
  });

  it('may hold the other half of what a script says in part', async () => {
    const halves = [
      '[video]\nstandard = pal',
      '[switch.self-level]\nchannel = 6',
      '[switch.return]\nchannel = 7\non = 1700..2000 us\njoined-with = arm',
      '[telemetry]\nlink = mavlink',
      '[gyro.filter.1]\nkind = follow-motors',
      '[control]\nrate = 4 kHz\nwhen.high-throttle.from = 60 %',
      '[overlay.speed]\nplace = [1, 1]\n[overlay.esc-temperature]\nplace = [2, 1]',
    ];
    const script = `${asCraft}${halves.join('\n')}\n`;
    const waiting = [
      ...['obey/switch-incomplete', 'obey/joined-with-nothing'],
      ...['wire/telemetry-port-missing', 'tune/tones-need-feedback', 'tune/gains-missing'],
      ...['tune/situation-changes-nothing', 'see/element-without-source', 'obey/function-without-sensor'],
      ...['see/cell-voltage-missing', 'safe/home-not-known'],
    ];
    const alone = await over({}, script);
    assert.deepEqual(
      waiting.filter((id) => !alone.ids().includes(id)),
      [],
    );
    const files = { 'kestrel.boardtext': listing.join('\n') };
    const { ids } = await over(files, `include "kestrel.boardtext"\n${script}`);
    assert.deepEqual(
      waiting.filter((id) => ids().includes(id)),
      [],
    );
  });

  it('may hold the channel of the band that it holds', async () => {
    const script = `include "kestrel.boardtext"\n[board]\nprofile = heron\n${asCraft}`;
    const told = async (...lines: readonly string[]) => {
      const board = ['in picture:', 'video band is r;', ...lines].join('\n');
      const { ids } = await over({ 'kestrel.boardtext': board }, script);
      return ids().includes('see/channel-incomplete');
    };
    assert.deepEqual([await told(), await told('sender place is 3;')], [true, false]);
  });

  it('is the only one of its craft', async () => {
    const { findings } = await over(
      { 'kestrel.boardtext': listing.join('\n'), 'other.boardtext': 'pace ~> 3\nreach ~> 4\n' },
      `include "kestrel.boardtext"\ninclude "other.boardtext"\n${asCraft}`,
    );
    const refused = findings().find(({ check }) => check.id === 'line/include-refused');
    assert.match(refused?.values.why ?? '', /already, kestrel\.boardtext$/);
  });

  it('is refused at its include where it holds more than is read, with what to do', async () => {
    const long = listing.join('\n') + ' '.repeat(10_000_000);
    const { findings } = await over({ 'kestrel.boardtext': long }, `include "kestrel.boardtext"\n${asCraft}`);
    const refused = findings().find(({ check }) => check.id === 'line/include-too-long');
    assert.equal(
      refused === undefined ? '' : messageOf(refused),
      "kestrel.boardtext can't be included: the text is longer than 10000000 characters.",
    );
  });

  it('is told of at its include where its board would refuse a line of it', async () => {
    const files = { 'kestrel.boardtext': listing.join('\n') };
    const { workspace, ids } = await over(files, `include "kestrel.boardtext"\n${asCraft}`);
    assert.ok(!ids().includes('line/include-faulty'));
    workspace.openBoardText(text, listing.join('\n'), 1);
    workspace.changeBoardText(text, listing.join('\n').replace('225', '425'), 2);
    const faulty = workspace.findings(craft).find(({ check }) => check.id === 'line/include-faulty');
    assert.deepEqual(
      [faulty?.values.count, faulty?.place.line.text, faulty?.related[0]?.place.line.text],
      ['1', 'include "kestrel.boardtext"', 'own.calm."first cut" = 425'],
    );
  });

  it('has what a script overrides held against what it states itself, with the finding in the script', async () => {
    const board = [
      'first cut ~> 225 (from 50 to 400)',
      'horn ~> loud (loud, soft)',
      'spin-up ~> 900 (from 1 to 9)',
    ];
    const { findings } = await over(
      { 'kestrel.boardtext': board.join('\n') },
      `include "kestrel.boardtext"\n${asCraft}\n[own]\n"first cut" = 410\nhorn = lowd\nspin-up = 800\n`,
    );
    const told = () =>
      findings()
        .filter(({ check }) => check.id.startsWith('board/'))
        .map((one) => [one.place.line.text, messageOf(one)]);
    assert.deepEqual(told(), [
      ['"first cut" = 410', "first cut takes 50 to 400 by the board's own listing; 410 is not among that."],
      [
        'horn = lowd',
        "horn takes loud, soft by the board's own listing; lowd is none of them. Did you mean loud?",
      ],
    ]);
    const [fix] = findings().find(({ values }) => values.given === 'lowd')?.fixes ?? [];
    assert.deepEqual(
      [fix === undefined ? '' : fixTitle(fix), fix?.edits[0]?.newText],
      ['Write loud', 'loud'],
    );
  });

  it('is mended where the value stands, or overridden in the script', async () => {
    const board = ['in quiet:', 'gyro rate is 6.4;', 'in steadiness:', 'loop rate is 2.5;'];
    const { workspace, findings } = await over(
      { 'kestrel.boardtext': board.join('\n') },
      `include "kestrel.boardtext"\n[board]\nprofile = heron\n${asCraft}`,
    );
    const uneven = findings().find(({ check }) => check.id === 'tune/control-rate-uneven');
    const [there, here] = uneven?.fixes ?? [];
    const [inText] = there === undefined ? [] : editsOf(there);
    const layer = workspace.layer(text) ?? assert.fail('no layer');
    assert.equal(inText?.uri, text);
    const [edit] = boardEdits(layer, testCatalog, inText?.edits ?? []) ?? [];
    assert.equal(edit?.range.start.line, 3);
    assert.match(edit?.newText ?? '', /^\d\.\d$/);
    assert.match(here?.title ?? '', /, in this script$/);
    assert.equal(here?.edits[0]?.place.script.uri, craft);
  });

  it('follows the disk, and the board that is picked for it', async () => {
    const { fileSystem, workspace } = await over(
      { 'kestrel.boardtext': 'pace is 3;\nreach is 4;\n' },
      `include "kestrel.boardtext"\n${asCraft}`,
    );
    const setting = (path: string) => workspace.get(craft)?.craft.setting(path, null)?.value ?? null;
    assert.equal(setting('own.pace') === null, false);
    fileSystem.files.set(text, 'horn is 5;\nlamp is 6;\n');
    workspace.diskChanged(text);
    await workspace.settled();
    assert.equal(setting('own.pace'), null);
    fileSystem.files.set(`${text}.board.json`, '{"version":1,"board":"heron"}');
    workspace.diskChanged(`${text}.board.json`);
    await workspace.settled();
    assert.equal(workspace.layer(text)?.profile?.name, 'heron');
  });
});
