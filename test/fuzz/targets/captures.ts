import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { scriptTextOf } from '../../../server/src/board/layer/layer';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { recognisedProfile } from '../../../server/src/board/layer/recognised-profile';
import { readListing } from '../../../server/src/board/listing/read-listing';
import type { Profile } from '../../../server/src/board/profile/profile';
import { prove } from '../../../server/src/board/proving/prove';
import { entriesOf } from '../../../server/src/board/writing/entries';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsOf } from '../../support/findings';
import { type BoardName, boardNames, capture, profileNamed, racerView } from '../inputs/board-texts';
import { target } from '../target';

interface Captured {
  readonly board: BoardName;
  readonly text: string;
}

/** Every setting of the board is told once, whatever it is. */
function proves(profile: Profile, text: string): void {
  const capture = readListing(text, profile.text.forms);
  const entries = entriesOf(profile, racerView());
  const proof = prove({ profile, entries, captured: null, capture, except: new Set(), ignoresExtra: false });
  assert.equal(proof.rows.filter(({ at }) => at !== null).length, capture.settings.length);
  assert.equal(
    Object.values(proof.counts).reduce((sum, count) => sum + count, 0),
    proof.rows.length,
  );
  if (proof.isWhole) assert.equal(capture.left.length, 0);
}

/** Nothing of a capture is lost: each line is in the script, as a setting or as a comment. */
function becomesScript(profile: Profile, text: string): void {
  const made = makeScript(profile, testCatalog, text);
  assert.equal(made.left.length, readListing(text, profile.text.forms).left.length);
  const faults = findingsOf(craftOf(made.text)).filter(({ check }) =>
    ['line/unreadable', 'line/unknown-name', 'line/no-value', 'line/open-text'].includes(check.id),
  );
  assert.deepEqual(
    faults.map(({ check, place }) => [check.id, place.line.text]),
    [],
    'a made script can be read',
  );
}

/** Every place of a layer lies in its text, and each setting is a line of its script. */
function isLayer(profile: Profile, text: string): void {
  const layer = new LayerReader(testCatalog, profile).read(text);
  assert.equal(layer.lines.length, layer.settings.length);
  assert.equal(scriptTextOf(layer).split('\n').length, layer.lines.length + 1, 'a line for each setting');
  for (const { at } of layer.settings)
    for (const { start, end } of [at.name, at.value]) {
      assert.ok(start.line <= end.line && end.line < layer.texts.length);
      assert.ok(end.character <= (layer.texts[end.line] ?? '').length);
    }
  for (const { spans, script } of layer.lines)
    if (spans !== null) assert.ok(spans.value.end <= script.length && spans.name.end <= spans.value.start);
}

export const captures = target<Captured>(
  {
    name: 'captures',
    share: 9,
    holds: 'a capture is proved, read and translated, and no line of it is lost',
  },
  fc.record({ board: fc.constantFrom(...boardNames), text: capture }),
  ({ board, text }) => {
    const profile = profileNamed(board);
    recognisedProfile(testCatalog, text);
    proves(profile, text);
    becomesScript(profile, text);
    isLayer(profile, text);
  },
);
