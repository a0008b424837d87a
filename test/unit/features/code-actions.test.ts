import { strict as assert } from 'node:assert';
import { type CodeAction, codeActions } from '../../../server/src/features/code-actions';
import { fixAll } from '../../../server/src/features/fix-edits';
import { type Range, rangeOf } from '../../../server/src/features/range';
import type { Snapshot } from '../../../server/src/features/snapshot';
import { withEdits } from '../../../server/src/features/text-edits';
import { applied } from '../../support/applied';
import { findingsOf } from '../../support/findings';
import { snapshotOf, withoutCursor } from '../../support/snapshot';

type Files = Readonly<Record<string, string>>;

const everything: Range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
const idsOf = ({ findings }: CodeAction) => findings.map(({ check }) => check.id).join();

/** The actions at the cursor, each with the text that it makes. */
function offered(marked: string, files: Files = {}) {
  const { snapshot, position } = snapshotOf(marked, files);
  const texts = { ...files, 'main.craft': withoutCursor(marked).text };
  return codeActions(snapshot, { start: position, end: position }).map((action) => ({
    title: action.title,
    for: idsOf(action),
    preferred: action.isPreferred,
    texts: applied(action.edits, texts),
  }));
}

/** The text that accepting what a check found at the cursor makes; null where that is not offered. */
function accepted(marked: string, files: Files = {}, id = 'safe/arms-on-its-side'): Files | null {
  const action = offered(marked, files).find((one) => one.title.startsWith('Accept') && one.for === id);
  return action?.texts ?? null;
}

function fixedAll(text: string): string {
  const { snapshot } = snapshotOf(text);
  return withEdits(snapshot.script.document, fixAll(snapshot));
}

describe('quick fixes', () => {
  it('mend what stands under the cursor', () => {
    assert.deepEqual(offered('[gyro]\nrate = 6,|4 kHz'), [
      {
        title: 'Write 6.4',
        for: 'line/decimal-comma',
        preferred: true,
        texts: { 'main.craft': '[gyro]\nrate = 6.4 kHz' },
      },
    ]);
  });

  it('are each for their own problem only (G07)', () => {
    const { snapshot } = snapshotOf('[gyro]\nraet = 1,5 hz');
    const findings = snapshot.findings();
    assert.deepEqual(
      findings.map(({ check }) => check.id),
      ['line/unknown-name', 'line/decimal-comma', 'line/unknown-unit'],
    );
    for (const { check, place } of findings) {
      const actions = codeActions(snapshot, everything, [{ id: check.id, range: rangeOf(place) }]);
      assert.deepEqual(actions.map(idsOf), [check.id]);
    }
    assert.deepEqual(
      codeActions(snapshot, everything).map((action) => `${idsOf(action)}: ${action.title}`),
      ['line/unknown-name: Write rate', 'line/decimal-comma: Write 1.5', 'line/unknown-unit: Write Hz'],
    );
  });

  it('are not offered for a problem that is gone (G07)', () => {
    const { snapshot } = snapshotOf('[gyro]\nrate = 1,5 kHz');
    const [finding] = snapshot.findings();
    assert.ok(finding !== undefined);
    const shown = { id: finding.check.id, range: rangeOf(finding.place) };
    assert.equal(codeActions(snapshot, everything, [shown]).length, 1);
    const { range } = shown;
    const changed = snapshot.script.edit([{ start: range.start, end: range.end, text: '1.5' }]);
    snapshot.craft.changed(changed);
    assert.deepEqual(codeActions(snapshot, everything, [shown]), []);
  });

  it('are preferred only where there is no other for the finding', () => {
    const actions = offered('[gyro]\nrate = 64|00');
    assert.deepEqual(
      actions.map(({ title, preferred }) => [title, preferred]),
      [
        ['Write 6400 Hz', false],
        ['Write 6400 kHz', false],
      ],
    );
  });

  it('take the blanks along when they remove an acceptance', () => {
    const [removal] = offered('[gyro]\nrate = 6.4 kHz   # accept tune/|none: why\nmount = hard');
    assert.equal(removal?.texts['main.craft'], '[gyro]\nrate = 6.4 kHz\nmount = hard');
  });
});

describe('accepting a risk', () => {
  const risky = '[arming]\ntilt-limit = 89 |deg';

  it('puts an acceptance at the line’s end, its reason for the pilot to type', () => {
    assert.deepEqual(accepted(`${risky}  \nneeds = []`), {
      'main.craft':
        '[arming]\ntilt-limit = 89 deg # accept safe/arms-on-its-side: why this is fine here\nneeds = []',
    });
    const { snapshot, position } = snapshotOf(risky);
    const action = codeActions(snapshot, { start: position, end: position }).find(
      (one) => idsOf(one) === 'safe/arms-on-its-side' && one.kind === 'accept',
    );
    assert.equal(action?.isPreferred, false);
    const edit = action?.edits[0]?.edits[0];
    assert.deepEqual(
      edit?.stops?.map(({ start, end }) => edit.newText.slice(start, end)),
      ['why this is fine here'],
    );
  });

  it('quiets the finding once the reason is typed', () => {
    const text = accepted(risky)?.['main.craft'] ?? '';
    const levels = (written: string) =>
      findingsOf(snapshotOf(written).snapshot.craft)
        .filter(({ check }) => check.id === 'safe/arms-on-its-side')
        .map(({ level, accepted: reason }) => [level, reason]);
    assert.deepEqual(levels(text), [['risk', null]]);
    assert.deepEqual(levels(text.replace('why this is fine here', 'hall only')), [['note', 'hall only']]);
  });

  it('keeps the words of a comment that is there', () => {
    assert.equal(
      accepted(`${risky}   #  hall only`)?.['main.craft'],
      '[arming]\ntilt-limit = 89 deg   # accept safe/arms-on-its-side: why this is fine here # hall only',
    );
    assert.equal(
      accepted(`${risky} #`)?.['main.craft'],
      '[arming]\ntilt-limit = 89 deg # accept safe/arms-on-its-side: why this is fine here',
    );
  });

  it('adds nothing to an acceptance that is there, or meant to be', () => {
    assert.equal(accepted(`${risky} # accept tune/other: because`), null);
    assert.equal(accepted(`${risky} # accept`), null);
  });

  it('may be accepting a note, and comes after all that mends', () => {
    const titles = offered('let qui|et = 90 Hz').map(({ title }) => title);
    assert.deepEqual(titles, ['Take the constant out', 'Accept this note: line/constant-unused']);
    const text = accepted('let qui|et = 90 Hz', {}, 'line/constant-unused')?.['main.craft'] ?? '';
    assert.equal(text, 'let quiet = 90 Hz # accept line/constant-unused: why this is fine here');
    assert.deepEqual(
      snapshotOf(text.replace('why this is fine here', 'for the next craft'))
        .snapshot.findings()
        .map(({ level, accepted: reason }) => [level, reason]),
      [['tidy', 'for the next craft']],
    );
    const { snapshot } = snapshotOf('let quiet = 90 Hz\n[arming]\ntilt-limit = 89 deg\ntilt-limt = 1 deg');
    const kinds = codeActions(snapshot, everything).map(({ kind }) => kind);
    assert.ok(kinds.includes('fix') && kinds.indexOf('accept') > 0);
    assert.deepEqual(
      kinds.slice(kinds.indexOf('accept')).filter((kind) => kind !== 'accept'),
      [],
    );
  });

  it('is not offered for what must be fixed, is only tidy, is accepted, or is about acceptances', () => {
    assert.equal(accepted('[arming]\ntilt-limit = 4000 |deg', {}, 'line/outside-range'), null);
    assert.equal(accepted('[craft]\n[gyro]\n[cra|ft]', {}, 'line/section-again'), null);
    assert.equal(accepted('[gyro]\nrate = 8 kHz # acc|ept gyro', {}, 'line/acceptance-form'), null);
    assert.equal(accepted(`${risky} # accept safe/arms-on-its-side: hall`), null);
  });

  it('goes to the included script that sets the value', () => {
    const files = { 'club.craft': '[switch.arm]\nsprings-back = on\n' };
    const text = 'include "cl|ub.craft"\n[craft]\nname = "x"';
    const texts = accepted(text, files, 'obey/arm-springs-back');
    assert.deepEqual(texts, {
      'club.craft': '[switch.arm]\nsprings-back = on # accept obey/arm-springs-back: why this is fine here\n',
    });
  });
});

describe('fix all', () => {
  it('moves lines to their sections, one after the other where they meet', () => {
    const once = fixedAll('[gyro]\nkv = 1950 rpm/V\npoles = 14\nrate = 6,4 kHz\n');
    assert.equal(once, '[gyro]\npoles = 14\nrate = 6.4 kHz\n\n[motor]\nkv = 1950 rpm/V\n');
    assert.equal(fixedAll(once), '[gyro]\nrate = 6.4 kHz\n\n[motor]\nkv = 1950 rpm/V\npoles = 14\n');
  });

  it('makes every fix that is the only one', () => {
    assert.equal(
      fixedAll('[gyro]\nraet = 6,4 khz\n[receiver]\nsupply=5\n'),
      '[gyro]\nrate = 6.4 kHz\n[receiver]\nsupply=5 V\n',
    );
  });

  it('leaves findings with several fixes or none to the pilot', () => {
    const text = '[gyro]\nrate = 6400\nqqqq = 5\n';
    assert.equal(fixedAll(text), text);
  });

  it('makes edits that are sorted and do not overlap (G07)', () => {
    const { snapshot } = snapshotOf('[gyro]\nraet = 1,5\u00a0hz\n[gyro.lowpas]\ncutoff = 3 \u2212 2 hz');
    const edits = fixAll(snapshot);
    assert.ok(edits.length > 3);
    const offsets = edits.flatMap(({ range: { start, end } }) =>
      [start, end].map(({ line, character }) => line * 1000 + character),
    );
    assert.deepEqual(
      offsets,
      [...offsets].sort((one, other) => one - other),
    );
  });

  it('makes the same change once where it is found for several packs', () => {
    const { snapshot } = snapshotOf('[gyro]\nrate = 6.4 kHz');
    const line = snapshot.script.document.lineAt(1);
    const check = snapshot.catalog.check('line/unit-missing');
    assert.ok(line !== undefined && check !== undefined);
    const place = { script: snapshot.script, line, start: 14, end: 14 };
    const fix = { title: 'Add a line', values: {}, set: null, edits: [{ place, newText: '\nmount = hard' }] };
    const finding = {
      check,
      level: check.level,
      values: {},
      place,
      related: [],
      accepted: null,
      fixes: [fix],
    };
    const both: Snapshot = {
      ...snapshot,
      findings: () => ['sprint', 'cruise'].map((pack) => ({ ...finding, pack })),
    };
    assert.deepEqual(
      fixAll(both).map(({ newText }) => newText),
      ['\nmount = hard'],
    );
    const [action, ...others] = codeActions(both, everything);
    assert.equal(action?.findings.length, 2);
    assert.deepEqual(others, []);
  });

  it('keeps the line ends of the script (A05)', () => {
    const text = '[gyro]\r\nraet = 6,4 khz\r\n';
    assert.equal(fixedAll(text), '[gyro]\r\nrate = 6.4 kHz\r\n');
  });
});
