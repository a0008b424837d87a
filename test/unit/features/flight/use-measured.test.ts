import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { measuredEdits } from '../../../../server/src/features/flight/use-measured';
import { withEdits } from '../../../../server/src/features/text-edits';
import { Document } from '../../../../server/src/language/document';
import type { RecordingProposal } from '../../../../server/src/recording/report';
import { craftOf, findingsOf } from '../../../support/findings';
import { snapshotOf } from '../../../support/snapshot';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const comment = 'measured on 2026-06-12 in flights/0612.csv';

/** The script once it is written; null where it is refused. */
function written(text: string, sets: RecordingProposal['sets']): string | null {
  const { snapshot } = snapshotOf(text, club);
  const edits = measuredEdits(snapshot, sets);
  if (edits === null) return null;
  return withEdits(Document.of(text), edits);
}

describe('writing what was measured', () => {
  it('changes the line that says it, and adds a line where none does, each with its source', () => {
    const text = written(racer, [
      { path: 'motor.resistance', value: '0.11 ohm', comment },
      { path: 'flight.before-the-rain.hover-throttle', value: '38 %', comment },
    ]);
    assert.ok(text?.includes(`resistance    = 0.11 ohm  # ${comment}\n`), text ?? '');
    assert.match(
      text ?? '',
      new RegExp(`note {14}= "tail wobbles leaving the third tree"\\nhover-throttle = 38 %  # ${comment}\\n`),
    );
  });

  it('leaves what the pilot wrote behind a line, and puts a newer source in place of an older one', () => {
    const once = written(racer, [{ path: 'craft.mass', value: '214 g', comment }]);
    assert.match(once ?? '', new RegExp(`^mass .*= 214 g  # ready to fly, no pack; ${comment}$`, 'm'));
    const later = comment.replace('0612', '0713');
    const twice = written(once ?? '', [{ path: 'craft.mass', value: '216 g', comment: later }]);
    assert.match(twice ?? '', new RegExp(`^mass .*= 216 g  # ready to fly, no pack; ${later}$`, 'm'));
  });

  it('leaves a risk accepted that was accepted', () => {
    const before = findingsOf(craftOf(racer, club)).filter(({ accepted }) => accepted !== null);
    const text = written(racer, [{ path: 'derivative.chain', value: 'none', comment }]);
    const after = findingsOf(craftOf(text ?? '', club)).filter(({ accepted }) => accepted !== null);
    assert.ok(before.length > 0);
    assert.deepEqual(
      after.map(({ check }) => check.id),
      before.map(({ check }) => check.id),
    );
  });

  it('opens a section for a flight that has none, and writes nothing where a name is not known', () => {
    const text = written(racer, [{ path: 'flight.day-2026-06-12.hover-throttle', value: '38 %', comment }]);
    assert.ok(
      text?.endsWith(`\n[flight.day-2026-06-12]\nhover-throttle = 38 %  # ${comment}\n`),
      text?.slice(-200),
    );
    assert.equal(written(racer, [{ path: 'flight.day.colour', value: '1', comment }]), null);
    assert.equal(
      written(racer, [
        { path: 'craft.mass', value: '214 g', comment },
        { path: 'flight.day.colour', value: '1', comment },
      ]),
      null,
    );
    assert.equal(written(racer, []), null);
  });

  it('puts a new filter behind the last one, and a new flight behind the last one', () => {
    const text = written(racer, [
      { path: 'gyro.filter.3.kind', value: 'notch', comment },
      { path: 'gyro.filter.3.centre', value: '118 Hz', comment: '' },
      { path: 'craft.mass', value: '214 g', comment },
    ]);
    const wanted = `width = 14 Hz\n\n[gyro.filter.3]\nkind   = notch  # ${comment}\ncentre = 118 Hz\n\n[gyro.filter.1 @ cruise]`;
    assert.ok(text?.includes(wanted), text ?? '');
    assert.match(text ?? '', /^mass .*= 214 g/m);
    const flown = written(racer, [{ path: 'flight.dusk.hover-throttle', value: '38 %', comment: '' }]);
    assert.ok(flown?.endsWith('third tree"\n\n[flight.dusk]\nhover-throttle = 38 %\n'), flown?.slice(-120));
  });

  it('keeps a comment on its line, whatever stands in it', () => {
    const text = written(racer, [
      { path: 'craft.mass', value: '214 g', comment: 'measured in\na.csv\r[motor]' },
    ]);
    assert.match(text ?? '', /^mass .*; measured in a\.csv \[motor\]$/m);
    assert.equal(text?.split('\n').length, racer.split('\n').length);
  });
});
