import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { tryable, tryValue } from '../../../server/src/sheet/try-value';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const craft = craftOf(racer, club);
const findings = findingsOf(craft);

function tried(path: string, to: string, pack: string | null = 'sprint') {
  return tryValue(craft, pack, path, to, findings, findingsOf) ?? assert.fail(`${path} can’t be tried`);
}

/** The script with the edits made. */
function written(edits: ReturnType<typeof tried>['edits']): string {
  const copy = craft.copied();
  copy.root.edit(edits);
  return copy.root.document.text();
}

describe('what can be tried', () => {
  it('is a number, from a slider in the setting’s own unit', () => {
    const { by, now, title } = tryable(craft, 'sprint', 'gyro.filter.1.cutoff') ?? assert.fail('nothing');
    assert.ok(by.kind === 'slider');
    assert.deepEqual([now, by.unit, by.now], ['225 Hz', 'Hz', 225]);
    assert.ok(by.range[0] <= by.usual[0] && by.usual[0] < by.usual[1] && by.usual[1] <= by.range[1]);
    assert.ok(title.length > 3);
  });

  it('is a word or a switch, by choice, and a default that the script leaves out', () => {
    assert.deepEqual(tryable(craft, null, 'gyro.filter.1.kind')?.by.kind, 'choice');
    const left = tryable(craft, null, 'gyro.filter.2.cutoff');
    assert.equal(left?.isSet, false);
  });

  it('means the pack in view where a figure leaves the pack open', () => {
    assert.equal(tryable(craft, 'cruise', 'pack.<name>.cells')?.now, '4');
  });

  it('is no text, no curve, and nothing unknown', () => {
    for (const path of ['craft.name', 'stick.roll.curve', 'no.such-thing', 'gyro.filter.<number>.width'])
      assert.equal(tryable(craft, 'sprint', path), null);
  });

  it('has a round step for every number of the catalogue', () => {
    for (const name of testCatalog.parameters.keys()) {
      if (name.includes('<')) continue;
      const by = tryable(craft, null, name)?.by;
      if (by?.kind !== 'slider') continue;
      assert.ok(by.step > 0 && by.step <= by.usual[1] - by.usual[0], name);
      assert.ok([...by.usual, ...by.range].every(Number.isFinite), name);
    }
  });
});

describe('a value on trial', () => {
  it('leaves the craft itself as it is', () => {
    tried('motor.kv', '1000 rpm/V');
    assert.equal(craft.root.document.text(), racer);
  });

  it('replaces a calculation by the value, and adds a line for what only holds by default', () => {
    assert.match(written(tried('gyro.filter.1.cutoff', '150 Hz').edits), /\ncutoff = 150 Hz\n/);
    assert.match(
      written(tried('derivative.limit', '20 %').edits),
      /\[derivative\]\n(chain.*\n)?limit = 20 %\n/,
    );
  });

  it('changes the overlay’s line where the pack in view has one', () => {
    const text = written(tried('gyro.filter.1.cutoff', '120 Hz', 'cruise').edits);
    assert.match(text, /cutoff = 2\.5 \* quiet/);
    assert.match(text, /\[gyro\.filter\.1 @ cruise\]\ncutoff = 120 Hz/);
  });

  it('is refused in the script’s own words', () => {
    assert.match(tried('gyro.filter.1.cutoff', '3 ms').refusal ?? '', /a frequency was expected/);
    assert.match(tried('motor.poles', '2.5').refusal ?? '', /whole/);
    assert.equal(tried('gyro.filter.1.cutoff', '150 Hz').refusal, null);
  });

  it('is one line: nothing that would start another is taken', () => {
    assert.equal(tryValue(craft, 'sprint', 'motor.idle', '5 %\n[x]', findings, findingsOf), null);
  });

  it('tells findings that come, worst first', () => {
    const { gained } = tried('pack.sprint.cells', '8');
    assert.ok(gained.some(({ id }) => id === 'turn/motor-cells'));
    assert.equal(gained[0]?.level, 'must-fix');
  });
});
