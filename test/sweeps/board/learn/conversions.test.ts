import assert from 'node:assert/strict';
import { conversionsOf } from '../../../../server/src/board/learn/convert/conversions';
import { scalesFor } from '../../../../server/src/board/learn/convert/scales';
import type { FoundParameter } from '../../../../server/src/catalog/catalog';
import { asCounted, boardsNumber, ground, quantities, takenFor, withStated } from '../../../support/counted';

/** Usual values of a parameter, from one end to the other. */
function usualValues({ usual, assumed }: FoundParameter): readonly number[] {
  const { low, high } = usual ?? { low: 0, high: 0 };
  const all = [
    low,
    high,
    (low + high) / 2,
    low + (high - low) / 10,
    Math.sqrt(Math.max(0, low * high)),
    assumed ?? high,
  ];
  return [...new Set(all)];
}

/** Limits that a maker may set around a value: what can be, what is usual, and narrower ones. */
function endsAround({ range, usual }: FoundParameter, base: number): readonly (readonly [number, number])[] {
  if (range === undefined || usual === undefined) return [];
  const low = Math.max(0, usual.low);
  return [
    [range.low, range.high],
    [usual.low, usual.high],
    [low, Math.max(base, usual.high / 5)],
    [range.low, Math.min(range.high, 2 * usual.high)],
    [low, 5 * range.high],
  ];
}

describe('how the numbers of an unknown board are counted', () => {
  it('is right or asked, for every quantity of the catalogue in every unit, and in parts of it', () => {
    let [sure, all] = [0, 0];
    const wrong: string[] = [];
    for (const found of quantities)
      for (const { counts, title } of scalesFor(found))
        for (const base of usualValues(found)) {
          const value = boardsNumber(base, counts, found);
          const taken = takenFor(found, value);
          const conversion = conversionsOf([taken], ground).get(taken);
          assert.ok(conversion, found.path);
          const truth = asCounted({ meant: counts === undefined ? {} : { counts } }, found);
          const told = asCounted(conversion, found);
          all += 1;
          if (conversion.sureness !== 'ask') sure += 1;
          if (told !== null && told !== truth)
            wrong.push(`${found.path}: ${value} ${title} became ${conversion.preview.quantity}`);
          assert.equal(told === null, conversion.sureness === 'ask', found.path);
        }
    assert.deepEqual(wrong, []);
    assert.ok(all > 5000 && sure > 500, `${sure} of ${all} were sure`);
  });

  it('is right or asked where the listing states ends and a default, in every unit, and in parts of it', () => {
    let [sure, bare, all] = [0, 0, 0];
    const wrong: string[] = [];
    for (const found of quantities)
      for (const { counts, title } of scalesFor(found))
        for (const base of usualValues(found).slice(2, 4))
          for (const ends of endsAround(found, base)) {
            const [value, low, high] = [base, ...ends].map((one) => boardsNumber(one, counts, found));
            const taken = takenFor(found, value ?? '');
            // Also where the limits are as wide as the number may be.
            const width = [255, 65535].find((one) => one >= Number(value) && all % 3 === 0);
            const range = { low: low ?? '', high: width === undefined ? (high ?? '') : String(width) };
            const setting = withStated(taken.setting, { range, default: value ?? '' });
            const conversion = conversionsOf([{ ...taken, setting }], ground)
              .values()
              .next().value;
            const truth = asCounted({ meant: counts === undefined ? {} : { counts } }, found);
            const told = conversion === undefined ? null : asCounted(conversion, found);
            all += 1;
            if (told !== null) sure += 1;
            const alone = conversionsOf([taken], ground).get(taken);
            if (alone !== undefined && asCounted(alone, found) !== null) bare += 1;
            if (told !== null && told !== truth)
              wrong.push(`${found.path}: ${value} (${low} to ${high}) ${title} became ${told}`);
          }
    assert.deepEqual(wrong, []);
    assert.ok(all > 5000 && sure > 1.2 * bare, `${sure} of ${all} were sure, ${bare} without what is stated`);
  });

  it('is right or asked where the board prints decimals, in every unit', () => {
    let [sure, bare] = [0, 0];
    const wrong: string[] = [];
    for (const found of quantities) {
      for (const { counts, title } of scalesFor(found).filter((one) => (one.counts?.scale ?? 1) === 1))
        for (const base of usualValues(found)) {
          const number = Number(boardsNumber(base, counts, found));
          const value = number.toFixed(2);
          if (Math.abs(Number(value) - number) > 1e-3 * Math.abs(number) || !value.endsWith('0')) continue;
          const taken = takenFor(found, value);
          const conversion = conversionsOf([taken], ground).get(taken) ?? assert.fail(found.path);
          const truth = asCounted({ meant: counts === undefined ? {} : { counts } }, found);
          const told = asCounted(conversion, found);
          if (told !== null) sure += 1;
          const bareTaken = takenFor(found, String(number));
          if (conversionsOf([bareTaken], ground).get(bareTaken)?.meant !== null) bare += 1;
          if (told !== null && told !== truth) wrong.push(`${found.path}: ${value} ${title} became ${told}`);
        }
    }
    assert.deepEqual(wrong, []);
    assert.ok(sure > 1.5 * bare, `${sure} were sure, ${bare} without decimals`);
  });
});
