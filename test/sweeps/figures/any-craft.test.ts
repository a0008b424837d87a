import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { KnownParameter } from '../../../server/src/catalog/known-parameter';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import { exactText } from '../../../server/src/units/quantity';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';

/** A value of a parameter that its line checks let pass; curves, lists and texts are left to the demo. */
function allowed({ parameter, range, unit }: KnownParameter): fc.Arbitrary<string> | null {
  const words = testCatalog.choices(parameter).map(({ name }) => name);
  switch (parameter.kind) {
    case 'quantity': {
      if (range === undefined || unit === undefined) return null;
      const share = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
      return share.map((at) => exactText(range.low + at * (range.high - range.low), unit));
    }
    case 'count':
      return range === undefined ? null : fc.integer({ min: range.low, max: range.high }).map(String);
    case 'flag':
      return fc.constantFrom('on', 'off');
    case 'word':
      return words.length === 0 ? null : fc.constantFrom(...words);
    default:
      return null;
  }
}

const groups =
  /^(craft|motor|prop|pack\.<name>|power|gyro|derivative|control|esc|receiver|video|stick|wire|record)\b/;
const lines = [...testCatalog.parameters.values()]
  .filter(({ name }) => groups.test(name) && !name.includes('<number>') && !name.includes('<device>'))
  .flatMap((known) => {
    const value = allowed(known);
    const path = known.name.replace('<name>', 'one');
    return value === null ? [] : [value.map((text) => `${path} = ${text}`)];
  });

/** Most lines of a craft, each with any value that may stand there. */
const anyCraft = fc
  .tuple(...lines.map((line) => fc.tuple(line, fc.integer({ min: 0, max: 9 }))))
  .map((told) => told.flatMap(([line, left]) => (left === 0 ? [] : [line])).join('\n'));

describe('figures of any craft that its line checks let pass', () => {
  it('are numbers with an end, never below nothing, low to high in order; else there is no figure', () => {
    fc.assert(
      fc.property(anyCraft, (text) => {
        const view = new CraftView(craftOf(`${text}\nesc.signal = dshot300\nmotor.poles = 14`), 'one');
        for (const { id, isSigned } of figureSources) {
          const figure = figureOf(view, id);
          if (figure === null) continue;
          const { low, likely, high, why } = figure;
          assert.ok([low, likely, high].every(Number.isFinite), `${id}: ${low} ${likely} ${high}`);
          assert.ok(low <= likely && likely <= high, `${id}: ${low} ${likely} ${high}`);
          assert.ok(isSigned === true || low >= 0, `${id}: ${low}`);
          assert.doesNotMatch(why, /NaN|Infinity|undefined/, id);
        }
      }),
      { numRuns: 400 },
    );
  });
});
