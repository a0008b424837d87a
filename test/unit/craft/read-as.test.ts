import { strict as assert } from 'node:assert';
import { notLookedAt, type ReadAs } from '../../../server/src/craft/read-as';
import { craftOf } from '../../support/findings';

const files = {
  'habits.craft': '[signal-loss]\nhold = 350 ms\n',
  'base.craft': 'craft.mass = 212 g\n',
  'packs.craft': '[pack.sprint]\ncells = 6\n',
  'blank.craft': '# nothing yet\n',
};

/** A script by itself; what it is taken for, and what for where another script includes it. */
const cases: readonly [text: string, alone: ReadAs, included: ReadAs][] = [
  ['[craft]\n', 'whole', 'whole'],
  ['craft.mass = 212 g', 'whole', 'whole'],
  ['include "base.craft"', 'whole', 'whole'],
  ['[pack.sprint]\ncells = 6', 'whole', 'part'],
  ['pack.sprint.cells = 6', 'whole', 'part'],
  ['[motor]\nkv = 2900 rpm/V', 'whole', 'part'],
  ['[motor]', 'whole', 'part'],
  ['[motor @ sprint]\nidle = 6 %', 'whole', 'part'],
  ['[prop]\ndiameter = 5 in', 'whole', 'part'],
  ['[receiver]\nlink = crsf', 'whole', 'part'],
  ['[receiver]\nport = uart2', 'whole', 'part'],
  ['[receiver]\nlnk = crsf', 'whole', 'part'],
  ['include "packs.craft"', 'whole', 'part'],
  ['[receiver]\norder = AETR\nlow = 988 us', 'part', 'part'],
  ['[signal-loss]\nhold = 350 ms', 'part', 'part'],
  ['let quiet = 90 Hz', 'part', 'part'],
  ['include "habits.craft"', 'part', 'part'],
  ['[gyro', 'part', 'part'],
  ['wobble = 1', 'part', 'part'],
  ['', 'empty', 'empty'],
  ['\n\n  \n', 'empty', 'empty'],
  ['# my craft\n', 'empty', 'empty'],
  ['include "gone.craft"\n[craft]', 'incomplete', 'incomplete'],
];

describe('what a script is taken for', () => {
  for (const [text, alone, included] of cases) {
    it(`${JSON.stringify(text)} is ${alone}, and ${included} where another script includes it`, () => {
      assert.deepEqual(
        [false, true].map((isIncluded) => craftOf(text, files, () => isIncluded).readAs()),
        [alone, included],
      );
    });
  }

  it('is a part where it includes what says nothing: that is to be said yet', () =>
    assert.equal(craftOf('include "blank.craft"', files).readAs(), 'part'));

  it('is told for all but a whole craft', () => {
    assert.equal(notLookedAt('whole'), null);
    for (const is of ['part', 'incomplete', 'empty'] as const) assert.match(notLookedAt(is) ?? '', /check/);
  });

  it('follows each edit', () => {
    const craft = craftOf('', {}, () => false);
    const edit = (from: number, to: number, text: string) => {
      const at = (line: number) => ({ line, character: 0 });
      craft.changed(craft.root.edit([{ start: at(from), end: at(to), text }]));
      return craft.readAs();
    };
    assert.equal(craft.readAs(), 'empty');
    assert.equal(edit(0, 0, '# Finch\n'), 'empty');
    assert.equal(edit(1, 1, '[esc\n'), 'part');
    assert.equal(edit(1, 2, '[esc]\n'), 'part');
    assert.equal(edit(2, 2, '[prop]\n'), 'whole');
    assert.equal(edit(2, 3, '[motor @ sprint]\n'), 'whole');
    assert.equal(edit(1, 3, ''), 'empty');
  });
});
