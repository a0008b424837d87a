import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { scriptTextOf } from '../../../server/src/board/layer/layer';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { scriptEdits } from '../../../server/src/board/layer/script-edits';
import { profileOf } from '../../../server/src/board/profile/profile';
import { Document } from '../../../server/src/language/document';
import { testCatalog } from '../../support/catalog';
import { boardOf, plans } from '../../support/listing-shapes/generate';
import { printed } from '../../support/listing-shapes/print';

interface Edit {
  readonly line: number;
  readonly isInName: boolean;
  readonly text: string;
}

/** Follows a text through edits and holds that the layer is what reading it anew gives. */
function holdsThrough(edits: readonly Edit[], text: string): void {
  const reader = new LayerReader(testCatalog, null);
  let layer = reader.read(text);
  let script = Document.of(scriptTextOf(layer));
  const forms = profileOf({ name: 'lark', text: { forms: layer.forms }, settings: [] });
  let lines = text.split('\n');
  for (const { line, text: added, isInName } of edits) {
    const number = line % lines.length;
    const now = lines[number] ?? '';
    // Behind the value, or within the name.
    const at = isInName ? Math.min(3, now.length) : now.length;
    lines = lines.with(number, now.slice(0, at) + added + now.slice(at));
    const next = reader.read(lines.join('\n'));
    for (const one of scriptEdits(layer, next)) script = script.edit(one).document;
    layer = next;
    assert.equal(script.text(), scriptTextOf(layer));
    const anew = new LayerReader(testCatalog, forms).read(lines.join('\n'));
    // Documents are always read anew, and a text that is plainly another one by forms of its own.
    if (layer.forms.container !== 'lines') return;
    if (JSON.stringify(anew.forms) !== JSON.stringify(layer.forms)) return;
    assert.deepEqual(layer.settings, anew.settings);
  }
}

describe('a board’s text as a layer', () => {
  const edit = fc.record({
    line: fc.nat(400),
    isInName: fc.boolean(),
    text: fc.constantFrom('7', 'x', '', ' ', '12.5', '"', '#', '='),
  });
  const edits = fc.array(edit, { maxLength: 4 });
  const stray = fc.constantFrom(
    '?? ~~ ??',
    'nothing that any form of it would say',
    'odd \u0001 line',
    '5 % of it',
  );

  it('followed through edits of single lines is what reading it anew gives', () => {
    const holds = fc.property(plans(), edits, (plan, some) =>
      holdsThrough(some, printed(boardOf({ ...plan, dirt: [] })).text),
    );
    fc.assert(holds, { numRuns: 200 });
  });

  it('is so beside lines that were not read, and where a terminal broke lines', () => {
    const strays = fc.array(fc.tuple(fc.nat(400), stray), { minLength: 1, maxLength: 3 });
    const width = fc.constantFrom(30, 40, 60, 1000);
    const holds = fc.property(plans(), edits, strays, width, (plan, some, others, most) => {
      const lines = printed(boardOf({ ...plan, dirt: [] })).text.split('\n');
      for (const [at, line] of others) lines.splice(at % lines.length, 0, line);
      const broken = lines.flatMap((line) => line.match(new RegExp(`.{1,${most}}`, 'gu')) ?? ['']);
      holdsThrough(some, broken.join('\n'));
    });
    fc.assert(holds, { numRuns: 150 });
  });
});
