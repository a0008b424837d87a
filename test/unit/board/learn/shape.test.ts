import assert from 'node:assert/strict';
import { learnShape } from '../../../../server/src/board/learn/shape';
import { compileTemplate, match } from '../../../../server/src/board/template';
import { type Listing, listings } from '../../../support/listings';

interface Measured {
  /** Share of the settings lines that came out with the right name and value. */
  readonly right: number;
  /** Lines that came out as a setting and say something else. */
  readonly wrong: readonly string[];
}

function measured({ text, settings }: Listing): Measured {
  const said = new Map(settings.map((one) => [one.line, one]));
  const wrong: string[] = [];
  let right = 0;
  for (const line of learnShape(text).lines) {
    if (line.kind !== 'setting') continue;
    const { name, value, group } = line.setting;
    const truth = said.get(line.number);
    if (truth?.name === name && truth.value === value && truth.group === group) right += 1;
    else wrong.push(`${group} / ${name} / ${value} for ${JSON.stringify(truth)}`);
  }
  return { right: right / settings.length, wrong };
}

describe('the shape of a listing that nobody has seen before', () => {
  it('is tried on a dozen shapes and more', () => assert.ok(listings(3, false).length >= 12));

  for (const listing of listings(400, false)) {
    it(`is understood: ${listing.shape}`, () => {
      const { right, wrong } = measured(listing);
      assert.deepEqual(wrong.slice(0, 3), []);
      assert.ok(right >= 0.99, `${(100 * right).toFixed(1)} %, ${learnShape(listing.text).line}`);
    });
  }

  for (const listing of listings(400, true)) {
    it(`is understood among corrupt lines: ${listing.shape}`, () => {
      const { right, wrong } = measured(listing);
      assert.deepEqual(wrong.slice(0, 3), []);
      assert.ok(right >= 0.95, `${(100 * right).toFixed(1)} %, ${learnShape(listing.text).line}`);
    });
  }

  it('is a template that a profile can use', () => {
    for (const { text, shape, settings } of listings(200, false)) {
      const learned = learnShape(text);
      const made = compileTemplate(
        learned.line ?? '',
        ['name', 'value'],
        ['group', 'name', 'value', 'index'],
      );
      assert.equal(made.kind, 'template', shape);
      if (made.kind !== 'template' || shape.startsWith('wrapped')) continue;
      const lines = text.split(/\r\n|\n|\r/);
      for (const { line, name } of settings)
        assert.equal(match(made.template, lines[line] ?? '')?.get('name')?.text, name, shape);
    }
  });

  it('tells ranges and words that a listing states', () => {
    const find = (shape: string) =>
      learnShape(listings(100, false).find((one) => one.shape === shape)?.text ?? '').settings;
    const ranged = find('range in brackets behind it').filter(({ look }) => look === 'number');
    assert.deepEqual(ranged[0]?.remark?.range, ['0', '9999']);
    const worded = find('words in a remark behind it').filter(({ look }) => look === 'word');
    assert.deepEqual(worded[0]?.remark?.words, ['soft', 'steep', 'narrow']);
  });

  it('is none where there is no listing', () => {
    for (const text of ['', 'hello', '\u0000\u0001', 'a\nb\nc', 'Dear board,\nplease fly well.\nYours'])
      assert.equal(learnShape(text).settings.length, 0, JSON.stringify(text));
  });

  it('looks at each line of a long text a bounded number of times', () => {
    // Quadratic work on a megabyte of hostile lines would not end within the limit of a test.
    for (const line of [
      '= '.repeat(900),
      `${'a '.repeat(900)}=`,
      '(('.repeat(900),
      `x = ${'[ '.repeat(900)}`,
    ])
      assert.equal(learnShape(`${line}\n`.repeat(600)).settings.length <= 600, true);
  });
});
