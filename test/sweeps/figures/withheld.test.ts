import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import type { Withheld } from '../../../server/src/figures/withheld';
import { answerTo, withheldOf } from '../../support/answers';
import { craftOf } from '../../support/findings';
import { wholeCraft } from '../../support/whole-craft';

function hasOpenEnd(lines: readonly string[], id: string): boolean {
  const craft = craftOf(lines.join('\n'));
  const figure = figureOf(new CraftView(craft, craft.packs()[0] ?? null), id);
  return figure?.highWords === 'unknown';
}

/** Of the figures that ask for something, one for each set of what they ask for. */
function asking(withheld: ReadonlyMap<string, Withheld>): readonly Withheld[] {
  const bySet = new Map([...withheld.values()].map((one) => [one.needs.join(' '), one]));
  bySet.delete('');
  return [...bySet.values()];
}

const groups = [
  'craft',
  'motor',
  'esc',
  'prop',
  'pack',
  'power',
  'gyro',
  'derivative',
  'control',
  'receiver',
];

/** The whole craft without some of its lines, and without some groups. */
const partialCraft = fc
  .record({
    without: fc.subarray(groups, { maxLength: 4 }),
    kept: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: wholeCraft.length,
      maxLength: wholeCraft.length,
    }),
  })
  .map(({ without, kept }) =>
    wholeCraft.filter(
      (line, index) =>
        line.startsWith('craft.name') ||
        ((kept[index] ?? 1) > 0.2 && !without.some((group) => line.startsWith(`${group}.`))),
    ),
  );

describe('a figure that is withheld', () => {
  it('appears once what it asks for is written, or asks for something further', () => {
    fc.assert(
      fc.property(partialCraft, (lines) => {
        for (const { id, needs, because } of asking(withheldOf(lines))) {
          const written = [...lines, ...needs.map(answerTo)];
          const after = withheldOf(written).get(id);
          if (after === undefined || after.because !== null || because !== null) continue;
          assert.ok(after.needs.length > 0, `${id} says no more why it is withheld`);
          for (const path of after.needs) assert.ok(!needs.includes(path), `${id} asks for ${path} again`);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('asks for nothing that it can do without', () => {
    fc.assert(
      fc.property(partialCraft, fc.nat(), (lines, seed) => {
        for (const { id, needs } of asking(withheldOf(lines))) {
          const left = needs[seed % needs.length];
          const others = needs.filter((path) => path !== left);
          const written = [...lines, ...others.map(answerTo)];
          // A sum of parts of which some are known is no less than these: what it asks for is its other end.
          if (others.length > 0 && hasOpenEnd(written, id)) continue;
          const after = withheldOf(written).get(id);
          // What is written of a pack gives it a name.
          const still = after?.needs.some((path) => answerTo(path) === answerTo(left ?? ''));
          assert.ok(still, `${id} can do without ${left}`);
        }
      }),
      { numRuns: 12 },
    );
  });
});
