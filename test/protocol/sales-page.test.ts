import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { propsoff } from '../support/command-line';

/** Scripts with the whole sheet that is printed of them, held as a pilot reads it. */
const sheets = 'test/protocol/sales-page';

const printed = new Map<string, string>();

function sheetOf(name: string): string {
  const known = printed.get(name);
  if (known !== undefined) return known;
  const { stdout, status } = propsoff(['sheet', '--surer', `${sheets}/${name}.craft`]);
  assert.equal(status, 0);
  printed.set(name, stdout);
  return stdout;
}

/** The row of a figure with the column of each pack. */
function row(sheet: string, title: string): readonly string[] {
  const line = sheet.split('\n').find((one) => one.startsWith(`  ${title}  `)) ?? assert.fail(title);
  return line.trim().split(/ {2,}/).slice(1);
}

/** `38.5 % (34.5–44)` */
function spanOf(cell: string | undefined): {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
} {
  const [likely = Number.NaN, low = Number.NaN, high = Number.NaN] = (cell?.match(/\d+(\.\d+)?/g) ?? []).map(
    Number,
  );
  return { likely, low, high };
}

describe('the sheet of a craft of which no more is known than a sales page tells', () => {
  for (const name of ['sold', 'flown'])
    it(`is word for word what was read over: ${name}`, () => {
      // Made anew by: node dist/propsoff.js sheet --surer <script> > <sheet>. Read it over as a pilot would.
      assert.equal(sheetOf(name), readFileSync(`${sheets}/${name}.txt`, 'utf8'));
    });

  it('has hover, thrust, minutes and tones with spans for each pack, and margins among what is not known', () => {
    const sheet = sheetOf('sold');
    for (const title of [
      'Throttle in the hover',
      'Thrust-to-weight at full throttle, pack half used',
      'Hovering time until landing',
      'Motor tone in the hover',
      'Blades passing in the hover',
    ]) {
      const cells = row(sheet, title);
      assert.equal(cells.length, 3, title);
      for (const { likely, low, high } of cells.map(spanOf)) assert.ok(low < likely && likely < high, title);
      if (!title.startsWith('Blades'))
        assert.match(sheet, new RegExp(`\n  ${title}: .* the span falls from `));
    }
    assert.match(sheet, /\n {2}Margins: not known yet\. Write control\.roll\.proportional, /);
  });

  it('is surer after a flight, which lies within what was estimated before', () => {
    const [sold, flown] = [sheetOf('sold'), sheetOf('flown')];
    const before = row(sold, 'Throttle in the hover').map(spanOf);
    const after = row(flown, 'Throttle in the hover').map(spanOf);
    for (const [index, { low, high }] of after.entries()) {
      const was = before[index] ?? assert.fail();
      assert.ok(high - low < 0.6 * (was.high - was.low), `${low} to ${high}`);
    }
    // The pack that was in, the second: 38 % was read off.
    assert.ok(Math.abs((after[1]?.likely ?? 0) - 38) < Math.abs((before[1]?.likely ?? 0) - 38));
    assert.match(flown, /hover throttle: you measured 38 %(?: on [-\d]+)?, the estimate was 40 %: corrected/);
    assert.match(
      flown,
      /hover current: you measured 4\.5 A(?: on [-\d]+)?, the estimate was 4\.59 A: corrected/,
    );
  });
});
