import assert from 'node:assert/strict';
import { csvOf, type Layout } from '../../simulator/csv';
import { layouts, simulatedLine } from '../../simulator/layouts';
import { Random } from '../../simulator/random';

const random = new Random(7);
const count = 40;
const columns = new Map(
  [...new Set([...layouts.values()].flatMap((layout) => layout.columns.flatMap(({ of }) => of ?? [])))].map(
    (name) => [name, Float64Array.from({ length: count }, () => random.normal() * random.factor(1e-4, 3))],
  ),
);

/** The same file, written as plainly as may be. */
function plainly({
  separator,
  decimal,
  lineEnd,
  before,
  trails,
  startsWithZeros,
  ...layout
}: Layout): string {
  const lines = [
    ...before,
    layout.columns.map(({ heading }) => heading).join(separator) + (trails ? separator : ''),
  ];
  for (let row = 0; row < count; row += 1) {
    const cells = layout.columns.map(({ of, factor, offset, digits }, index) => {
      const isZero = of === null || (startsWithZeros && row === 0 && index > 0);
      const value = isZero ? 0 : columns.get(of)![row]! * factor + offset;
      return value.toFixed(digits).replace('.', decimal);
    });
    lines.push(cells.join(separator) + (trails ? separator : ''));
  }
  return lines.map((line) => line + lineEnd).join('');
}

describe('the files that simulated loggers write', () => {
  for (const layout of layouts.values())
    it(`${layout.name}: say in their first line that they are simulated, and hold each number`, () => {
      const text = new TextDecoder().decode(csvOf({ count, columns }, layout));
      const expected = plainly(layout);
      assert.ok(text.startsWith(simulatedLine));
      const [lines, plain] = [text.split(layout.lineEnd), expected.split(layout.lineEnd)];
      assert.equal(lines.length, plain.length);
      assert.deepEqual(lines.slice(0, 2), plain.slice(0, 2));
      const numbers = (line: string) =>
        line.split(layout.separator).map((cell) => Number(cell.replace(layout.decimal, '.')));
      for (const [index, line] of lines.entries()) {
        if (index < 2) continue;
        const [found, wanted] = [numbers(line), numbers(plain[index]!)];
        assert.equal(found.length, wanted.length);
        for (const [cell, value] of found.entries()) {
          const digits = layout.columns[cell]?.digits ?? 0;
          // A half may be rounded to either side.
          assert.ok(Math.abs(value - wanted[cell]!) <= 1.01 * 10 ** -digits, `${line}\n${plain[index]}`);
        }
      }
    });
});
