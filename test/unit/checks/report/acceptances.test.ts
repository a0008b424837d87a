import { strict as assert } from 'node:assert';
import type { Level } from '../../../../server/src/catalog/model/check';
import { messageOf } from '../../../../server/src/checks/report/render';
import { catalogWith, OwnCraft, ruleOf } from '../../../support/own-checks';

const risk = ruleOf({ id: 'own/risk', when: ['gyro.filter.1.kind is none'], at: 'gyro.filter.1.kind' });
const fault = ruleOf({ id: 'own/fault', level: 'must-fix', when: ['gyro.rate < 2 kHz'], at: 'gyro.rate' });
const note = ruleOf({
  id: 'own/note',
  level: 'note',
  when: ['gyro.filter.1.kind is notch'],
  at: 'gyro.filter.1.kind',
});
const catalog = catalogWith(risk, fault, note);

function found(
  text: string,
  files: Readonly<Record<string, string>> = {},
  known = catalog,
): readonly (readonly (string | null)[])[] {
  const craft = new OwnCraft(known, text, files);
  return ['own', 'line']
    .flatMap((group) => craft.findings(group))
    .map(({ check, level, accepted }) => [check.id, level, accepted]);
}

describe('an accepted risk', () => {
  it('becomes a quiet note with its reason', () => {
    assert.deepEqual(found('[gyro.filter.1]\nkind = none # accept own/risk: one hover\n'), [
      ['own/risk', 'note', 'one hover'],
    ]);
  });

  it('stays a risk where the reason stands on another line', () => {
    assert.deepEqual(found('[craft]\n[gyro.filter.1]\n# accept own/risk: one hover\nkind = none\n'), [
      ['own/risk', 'risk', null],
      ['line/accept-unused', 'note', null],
    ]);
  });

  it('may be of a single line', () => {
    assert.deepEqual(found('[level]\ntilt-limit = 80 deg # accept line/outside-usual: demonstration\n'), [
      ['line/outside-usual', 'note', 'demonstration'],
    ]);
  });

  it('may be accepted in the script that sets it', () => {
    const files = { 'a.craft': '[gyro.filter.1]\nkind = none # accept own/risk: club habit\n' };
    assert.deepEqual(found('[craft]\ninclude "a.craft"\n', files), [['own/risk', 'note', 'club habit']]);
  });
});

describe('an accepted note', () => {
  const accepted = '[gyro.filter.1]\nkind = notch # accept own/note: soft on purpose\n';

  it('is told as what is only tidy, with its reason', () => {
    assert.deepEqual(found(accepted), [['own/note', 'tidy', 'soft on purpose']]);
  });

  it('is accepted as a risk is where the workspace ranks it higher, and not at all as a must-fix', () => {
    const ranked = (level: Level) => catalog.withLevels(new Map([['own/note', level]]));
    assert.deepEqual(found(accepted, {}, ranked('risk')), [['own/note', 'note', 'soft on purpose']]);
    assert.deepEqual(found(accepted, {}, ranked('must-fix')), [
      ['own/note', 'must-fix', null],
      ['line/accept-must-fix', 'risk', null],
    ]);
  });

  it('is one word too many where the workspace has switched the check off', () => {
    const silent = catalog.withLevels(new Map([['own/note', 'off']]));
    const [told] = new OwnCraft(silent, accepted).findings('line');
    assert.equal(told?.check.id, 'line/accept-unused');
    assert.equal(
      messageOf(told),
      'Nothing raises own/note here any more: this workspace has switched it off.',
    );
  });
});

describe('what must be fixed', () => {
  it('cannot be accepted, and that is said too', () => {
    assert.deepEqual(found('[gyro]\nrate = 1 kHz # accept own/fault: why not\n'), [
      ['own/fault', 'must-fix', null],
      ['line/accept-must-fix', 'risk', null],
    ]);
  });

  it('in a line itself cannot either', () => {
    assert.deepEqual(found('[gyro]\nwobble = 1 # accept line/unknown-name: why not\n'), [
      ['line/unknown-name', 'must-fix', null],
      ['line/accept-must-fix', 'risk', null],
    ]);
  });
});

describe('an acceptance that accepts nothing', () => {
  it('is told once the craft is whole', () => {
    const line = '[gyro.filter.1]\nkind = butterworth # accept own/risk: one hover\n';
    assert.deepEqual(found(`[craft]\n${line}`), [['line/accept-unused', 'note', null]]);
    assert.deepEqual(found(line), []);
  });

  it('is told on each line by itself, though the lines be equal', () => {
    const line = 'kind = none # accept own/risk: one hover\n';
    assert.deepEqual(found(`[craft]\n[gyro.filter.1]\n${line}[gyro.filter.2]\n${line}`), [
      ['own/risk', 'note', 'one hover'],
      ['line/accept-unused', 'note', null],
    ]);
  });

  it('may name a check that there is none of', () => {
    assert.deepEqual(found('[gyro]\nrate = 8 kHz # accept own/riks: one hover\n'), [
      ['line/accept-unknown', 'note', null],
    ]);
  });

  it('of a check that is near offers that one', () => {
    const [told] = new OwnCraft(catalog, '[gyro]\nrate = 8 kHz # accept own/riks: one hover\n').findings(
      'line',
    );
    assert.deepEqual(
      told?.fixes.map(({ edits }) =>
        edits.map(
          ({ place: { line, start, end }, newText }) =>
            line.text.slice(0, start) + newText + line.text.slice(end),
        ),
      ),
      [['rate = 8 kHz # accept own/risk: one hover']],
    );
  });

  it('can be removed by its fix', () => {
    const [told] = new OwnCraft(catalog, '[craft]\nmass = 212 g # accept own/risk: why\n').findings('line');
    const [edit] = told?.fixes[0]?.edits ?? [];
    assert.equal(told?.fixes[0]?.title, 'Remove the acceptance');
    assert.ok(edit);
    const { line, start, end } = edit.place;
    assert.equal(line.text.slice(0, start) + edit.newText + line.text.slice(end), 'mass = 212 g ');
  });
});
