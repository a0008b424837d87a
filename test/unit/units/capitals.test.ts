import { strict as assert } from 'node:assert';
import { capitalised, uncapitalised } from '../../../server/src/units/capitals';

describe('capitals', () => {
  it('begin a sentence', () => {
    assert.equal(capitalised('gyro filter'), 'Gyro filter');
    assert.equal(capitalised('ESC protocol'), 'ESC protocol');
    assert.equal(capitalised(''), '');
  });

  it('go within a sentence', () => {
    for (const [words, within] of [
      ['Gyro filter', 'gyro filter'],
      ['Hover', 'hover'],
      ['A pack’s cells', 'a pack’s cells'],
      ['Battery’s own', 'battery’s own'],
      ['Half-throttle current', 'half-throttle current'],
      ['Speed, as measured', 'speed, as measured'],
    ] as const)
      assert.equal(uncapitalised(words), within);
  });

  it('stay where a word is an abbreviation, a name or a file', () => {
    for (const words of ['ESC temperature', 'DShot at 600 kbit/s', 'SBUS', 'Evening.csv row', 'S1 pad', ''])
      assert.equal(uncapitalised(words), words);
  });
});
