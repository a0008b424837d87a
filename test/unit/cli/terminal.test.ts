import { strict as assert } from 'node:assert';
import { wrapped } from '../../../server/src/cli/report/wrapped';
import { columnsOf, wantsColour } from '../../../server/src/cli/terminal';

describe('whether there is colour', () => {
  const cases: readonly (readonly [
    env: Readonly<Record<string, string>>,
    isTTY: boolean,
    wanted: boolean,
  ])[] = [
    [{}, true, true],
    [{}, false, false],
    [{ TERM: 'dumb' }, true, false],
    [{ NO_COLOR: '1' }, true, false],
    [{ NO_COLOR: '' }, true, true],
    [{ FORCE_COLOR: '1' }, false, true],
    [{ FORCE_COLOR: '' }, false, true],
    [{ FORCE_COLOR: '0' }, true, false],
    [{ FORCE_COLOR: 'false' }, true, false],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, false, true],
  ];
  for (const [env, isTTY, wanted] of cases) {
    it(`${JSON.stringify(env)} in a ${isTTY ? 'terminal' : 'pipe'}: ${wanted}`, () => {
      assert.equal(wantsColour(env, { isTTY }), wanted);
    });
  }
});

describe('how wide lines may be', () => {
  const cases: readonly (readonly [
    said: string | undefined,
    columns: number | undefined,
    wide: number | null,
  ])[] = [
    [undefined, 120, 120],
    [undefined, undefined, null],
    [undefined, 0, null],
    ['80', 120, 80],
    ['80', undefined, 80],
    ['wide', 120, 120],
    ['-3', undefined, null],
    ['12', undefined, 40],
    [undefined, 20, 40],
  ];
  for (const [said, columns, wide] of cases) {
    it(`COLUMNS ${said ?? 'unset'}, a ${columns === undefined ? 'pipe' : `terminal of ${columns}`}: ${wide}`, () => {
      const env = said === undefined ? {} : { COLUMNS: said };
      const stream = columns === undefined ? {} : { isTTY: true, columns };
      assert.equal(columnsOf(env, stream), wide);
    });
  }
});

describe('text that is broken between words', () => {
  it('has its lead in front of the first line and its indent in front of the others', () => {
    assert.equal(wrapped('one two three', 10, { lead: '- ' }), '- one two\n  three');
    assert.equal(wrapped('one two three', 10, { indent: '    ' }), 'one\n    two\n    three');
  });

  it('keeps a word whole that is longer, and counts columns, not units', () => {
    assert.equal(wrapped('see propsoff/additions.json there', 12), 'see\npropsoff/additions.json\nthere');
    assert.equal(wrapped('海燕 海燕', 8), '海燕\n海燕');
    assert.equal(wrapped('\u001b[31mone\u001b[0m two', 7), '\u001b[31mone\u001b[0m two');
  });

  it('stays whole where there is no width', () => {
    assert.equal(wrapped('one two three', null, { lead: '  ' }), '  one two three');
  });
});
