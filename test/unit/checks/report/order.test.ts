import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { filledTemplate, slotsIn } from '../../../../server/src/checks/data/data-template';
import type { Finding } from '../../../../server/src/checks/report/finding';
import { countByLevel, inScriptOrder } from '../../../../server/src/checks/report/order';
import { messageOf } from '../../../../server/src/checks/report/render';
import { Workspace } from '../../../../server/src/workspace/workspace';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsIn, findingsOf } from '../../../support/findings';
import { edited, lineEdits } from '../../../support/line-edits';
import { MemoryFiles } from '../../../support/memory-files';
import { catalogWith, OwnCraft, ruleOf } from '../../../support/own-checks';

describe('findings', () => {
  const all = findingsOf(
    craftOf('wobble = 1\n[gyro]\nrate = 1,5 khz\n[gyro]\nmount = fom\n[level]\ntilt-limit = 80 deg\n'),
  );

  it('come in the order of the script', () => {
    const places = all.map(({ place }) => [place.script.lineNumber(place.line), place.start] as const);
    for (const [index, [line, start]] of places.entries()) {
      const [lineBefore, startBefore] = places[index - 1] ?? [-1, 0];
      assert.ok(line > lineBefore || (line === lineBefore && start >= startBefore));
    }
  });

  it('come in the same order whichever way they were found', () => {
    assert.deepEqual(inScriptOrder([...all].reverse()), all);
  });

  it('on one place come with the worst first, then by their ids', () => {
    const at = 'gyro.rate';
    const when = ['gyro.rate is set'];
    const rules = [
      ruleOf({ id: 'own/d', level: 'tidy', when, at }),
      ruleOf({ id: 'own/c', level: 'must-fix', when, at }),
      ruleOf({ id: 'own/b', level: 'risk', when, at }),
      ruleOf({ id: 'own/a', level: 'note', when, at }),
      ruleOf({ id: 'own/e', level: 'must-fix', when, at }),
    ];
    const found = new OwnCraft(catalogWith(...rules), '[gyro]\nrate = 8 kHz').findings();
    assert.deepEqual(
      found.map(({ check }) => check.id),
      ['own/c', 'own/e', 'own/b', 'own/a', 'own/d'],
    );
  });

  it('come in the same order after any edits of a script with very many', () => {
    // Wrong by themselves and without sections: where most is found anew, all is sorted.
    const line = fc.constantFrom('wobble = 1', 'wobble = 2 = 3', '= 3', '?', '# fine');
    const edit = lineEdits(line, { at: 199, over: 2, lines: 3 });
    const lines = fc.array(line, { minLength: 200, maxLength: 200 });
    fc.assert(
      fc.property(lines, fc.array(edit, { minLength: 1, maxLength: 12 }), (before, edits) => {
        const workspace = new Workspace({ catalog: testCatalog, fileSystem: new MemoryFiles() });
        const uri = 'test:///work/main.craft';
        const { craft } = workspace.openScript(uri, before.join('\n'), 1);
        workspace.findings(uri);
        for (const _ of edited(workspace, uri, edits))
          assert.deepEqual(workspace.findings(uri).map(placeOf), workspace.check(craft).map(placeOf));
      }),
      { numRuns: 60 },
    );
  });

  it('are counted by level', () => {
    const counts = countByLevel(all);
    assert.equal(
      Object.values(counts).reduce((sum, one) => sum + one, 0),
      all.length,
    );
    assert.equal(counts['must-fix'], all.filter(({ level }) => level === 'must-fix').length);
    assert.deepEqual(countByLevel([]), { 'must-fix': 0, risk: 0, note: 0, tidy: 0 });
  });
});

function placeOf({ check, place }: Finding): readonly unknown[] {
  return [place.script.lineNumber(place.line), place.start, place.end, check.id];
}

describe('the sentences of findings', () => {
  it('leave out what nothing was found for', () => {
    const [near] = findingsIn('[gyro]\nraet = 1 kHz');
    const [far] = findingsIn('[gyro]\nwobble = 1 kHz');
    assert.equal(near?.message, 'There is no parameter gyro.raet. Did you mean gyro.rate?');
    assert.equal(far?.message, 'There is no parameter gyro.wobble.');
  });

  it('show what the script says as it is, whatever it looks like', () => {
    const rule = ruleOf({ when: ['craft.name is set'], at: 'craft.name', message: 'It is {craft.name}.' });
    const [told] = new OwnCraft(catalogWith(rule), '[craft]\nname = "{craft.name} [[x]] $& $1"').findings();
    assert.equal(told && messageOf(told), 'It is "{craft.name} [[x]] $& $1".');
  });

  it('keep a slot that has no value, so that the gap is seen (F04)', () => {
    assert.equal(
      filledTemplate('{a} {b} {constructor} {__proto__}', { a: '1' }),
      '1 {b} {constructor} {__proto__}',
    );
    assert.deepEqual(slotsIn('{a} {b} {a} {} {c'), ['a', 'b']);
  });

  it('show long values shortened (F07)', () => {
    const told = (text: string) =>
      findingsIn(`[gyro]\nrate = 5 kHz "${text}"`).find(({ id }) => id === 'line/not-understood')?.message ??
      '';
    assert.match(told('x'.repeat(100)), /x{100}/);
    const long = told('x'.repeat(50_000));
    assert.match(long, /x…/);
    assert.ok(long.length < 500, `${long.length} characters`);
    assert.doesNotMatch(told('\u{1f6e0}'.repeat(20_000)), /[\ud800-\udfff]/u);
    assert.doesNotMatch(told(`y${'\u{1f6e0}'.repeat(20_000)}`), /[\ud800-\udfff]/u);
  });
});
