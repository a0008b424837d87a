import { strict as assert } from 'node:assert';
import { rendered } from '../../../support/rendered-listing';

const says =
  'tern speed = 5  (0 to 10; else 4; in Hz)\nplover mode = soft\nwillow, wide = -0.5  (-1 to 1; else 0)';

describe('a listing that is a table', () => {
  it('with commas, its columns named in English', () => {
    const text =
      'Parameter,Value,Unit,Min,Max,Default\ntern speed,5,Hz,0,10,4\nplover mode,soft\n"willow, wide",-0.5,,-1,1,0\n';
    assert.equal(rendered(text), says);
  });

  it('with tabs, its columns named in German and in another order', () => {
    const text =
      'Nr\tWert\tEinheit\tBezeichnung\tVorgabe\tMin\tMax\n1\t5\tHz\ttern speed\t4\t0\t10\n2\tsoft\t\tplover mode\t\t\t\n3\t-0.5\t\twillow, wide\t0\t-1\t1';
    assert.equal(rendered(text), says);
  });

  it('with bars and rules around it', () => {
    const text =
      '+------------+-------+\n| name       | value |\n|------------|-------|\n| tern speed |     5 |\n| plover     | "a|b" |\n+------------+-------+';
    assert.equal(rendered(text), 'tern speed = 5\nplover = "a|b"');
  });

  it('with columns that nothing names: numbers, groups, names, values, units, limits', () => {
    const text =
      '1;coast;tern;5;Hz;0;10\n2;coast;plover;6;ms;1;9\n3;wood;tern;7;Hz;0;10\n4;wood;raven;8;%;0;100';
    assert.equal(
      rendered(text),
      'coast › tern = 5  (0 to 10; in Hz)\ncoast › plover = 6  (1 to 9; in ms)\nwood › tern = 7  (0 to 10; in Hz)\nwood › raven = 8  (0 to 100; in %)',
    );
  });

  it('with words that nothing but blanks part, where a column is of words and the value is one of them', () => {
    const rows = ['| tern mode | soft | soft hard off |', '| plover | 4 | a number of your own |'];
    assert.equal(
      rendered(['| name | value | words |', ...rows].join('\n')),
      'tern mode = soft  (soft|hard|off)\nplover = 4',
    );
    assert.equal(
      rendered('1;tern;soft;soft hard off\n2;plover;b;a b c\n3;willow;off;on off'),
      'tern = soft  (soft|hard|off)\nplover = b  (a|b|c)\nwillow = off  (on|off)',
    );
  });

  it('not where the values of a line are many', () => {
    assert.equal(
      rendered('tern,1,2,3\nplover,4,5,6\nwillow,9,2,1'),
      'tern = 1,2,3\nplover = 4,5,6\nwillow = 9,2,1',
    );
  });

  it('of keys with values in each line', () => {
    const text =
      '<set id="tern" val="5" unit="Hz" low="0" high="9"/>\n<set id="plover mode" val="soft"/>\n<set id="willow" val="-1" unit="ms"/>';
    assert.equal(rendered(text), 'tern = "5"  (0 to 9; in Hz)\nplover mode = "soft"\nwillow = "-1"  (in ms)');
  });
});
