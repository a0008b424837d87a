import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { entriesOf } from '../../../server/src/board/entries';
import { scriptTextOf } from '../../../server/src/board/layer/layer';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { recognisedProfile } from '../../../server/src/board/layer/recognised-profile';
import type { Profile } from '../../../server/src/board/profile/profile';
import { prove } from '../../../server/src/board/prove';
import { readBoardLines } from '../../../server/src/board/read-lines';
import { scriptFromBoardText } from '../../../server/src/board/to-script';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsOf } from '../../support/findings';
import { type BoardName, boardNames, capture, profileNamed, racerView } from '../inputs/board-texts';
import { target } from '../target';

interface Captured {
  readonly board: BoardName;
  readonly text: string;
}

/** Every line of the board is told once, whatever it is. */
function proves(profile: Profile, text: string): void {
  const { rows, counts, unknown, isEqual } = prove(
    profile,
    testCatalog,
    entriesOf(profile, racerView()).entries,
    text,
  );
  const settings = readBoardLines(profile, text).filter(({ line }) => line.kind === 'setting');
  assert.equal(rows.filter(({ line }) => line !== null).length, settings.length);
  assert.equal(
    Object.values(counts).reduce((sum, count) => sum + count, 0),
    rows.length,
  );
  if (isEqual) assert.equal(unknown.length, 0);
}

/** Nothing of a capture is lost: each line is in the script, as a setting or as a comment. */
function becomesScript(profile: Profile, text: string): void {
  const made = scriptFromBoardText(profile, testCatalog, text);
  const lines = readBoardLines(profile, text);
  const settings = lines.filter(({ line }) => line.kind === 'setting');
  const { understood, kept, repeated, unknown } = made;
  assert.equal(understood + kept.length + repeated.length, settings.length, 'every settings line is told');
  assert.equal(unknown.length, lines.filter(({ line }) => line.kind === 'unknown').length);
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
