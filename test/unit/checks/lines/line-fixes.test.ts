import { strict as assert } from 'node:assert';
import { findingsIn } from '../../../support/findings';
import { mended } from '../../../support/mended';

/** The script, the check, and what each of its fixes makes of the script. */
type Mend = readonly [why: string, text: string, id: string, made: readonly string[]];

function hold(mends: readonly Mend[]): void {
  for (const [why, text, id, made] of mends) {
    it(why, () => assert.deepEqual(mended(text, `line/${id}`), made));
  }
}

function messageOf(text: string, id: string): string | undefined {
  return findingsIn(text).find((one) => one.id === `line/${id}`)?.message;
}

describe('a time where a frequency belongs, and the other way round', () => {
  hold([
    [
      'is turned over first',
      '[gyro.filter.1]\ncutoff = 3 ms',
      'wrong-dimension',
      [
        '[gyro.filter.1]\ncutoff = 333 Hz',
        '[gyro.filter.1]\ncutoff = 3 Hz',
        '[gyro.filter.1]\ncutoff = 3 kHz',
      ],
    ],
    [
      'is turned over into a time as well',
      '[signal-loss]\nhold = 2 Hz',
      'wrong-dimension',
      ['[signal-loss]\nhold = 500 ms', '[signal-loss]\nhold = 2 ms', '[signal-loss]\nhold = 2 s'],
    ],
    [
      'is not turned over where that lies outside what is possible',
      '[gyro.filter.1]\ncutoff = 3 h',
      'wrong-dimension',
      ['[gyro.filter.1]\ncutoff = 3 Hz', '[gyro.filter.1]\ncutoff = 3 kHz'],
    ],
    [
      'is not turned over where the two have nothing to do with each other',
      '[gyro.filter.1]\ncutoff = 3 mm',
      'wrong-dimension',
      ['[gyro.filter.1]\ncutoff = 3 Hz', '[gyro.filter.1]\ncutoff = 3 kHz'],
    ],
  ]);
});

describe('what is nearly right', () => {
  hold([
    [
      'three dots are two',
      '[switch.arm]\non = 1700...2100 us',
      'not-understood',
      ['[switch.arm]\non = 1700..2100 us'],
    ],
    [
      'a range is said with "to"',
      '[switch.arm]\non = 1700 to 2100 us',
      'not-understood',
      ['[switch.arm]\non = 1700 .. 2100 us'],
    ],
    [
      'a letter stands for a digit',
      '[gyro.filter.1]\ncutoff = l80 Hz',
      'not-understood',
      ['[gyro.filter.1]\ncutoff = 180 Hz'],
    ],
    [
      'a unit is spelled like one that can’t be meant',
      '[gyro]\nrate = 8 mhz',
      'unknown-unit',
      ['[gyro]\nrate = 8 kHz'],
    ],
  ]);
});

describe('a number of a collection that there is not', () => {
  hold([
    ['is brought to the first', '[gyro.filter.99]', 'unknown-section', ['[gyro.filter.1]']],
    ['is brought to the first from below', '[gyro.filter.0]', 'unknown-section', ['[gyro.filter.1]']],
    [
      'is brought to the lowest free one',
      '[gyro.filter.1]\n[gyro.filter.3]\n[gyro.filter.99]',
      'unknown-section',
      ['[gyro.filter.1]\n[gyro.filter.3]\n[gyro.filter.2]'],
    ],
    [
      'is brought to the first in a setting as well',
      '[gyro]\nfilter.99.centre = 200 Hz',
      'unknown-name',
      ['[gyro]\nfilter.1.centre = 200 Hz'],
    ],
  ]);

  it('is told with the numbers that there are', () => {
    assert.equal(
      messageOf('[gyro.filter.99]', 'unknown-section'),
      'There is no section gyro.filter.99. Did you mean gyro.filter.1? The numbers there run from 1 to 32.',
    );
  });
});

describe('a parameter under the wrong section', () => {
  hold([
    [
      'moves with its comment to its own',
      '[motor]\npoles = 14\n\n[gyro]\nkv = 1950 rpm/V  # as printed\nrate = 8 kHz\n',
      'unknown-name',
      ['[motor]\npoles = 14\nkv = 1950 rpm/V  # as printed\n\n[gyro]\nrate = 8 kHz\n'],
    ],
    [
      'moves to a section that is made for it',
      '[gyro]\nkv = 1950 rpm/V\nrate = 8 kHz\n',
      'unknown-name',
      ['[gyro]\nrate = 8 kHz\n\n[motor]\nkv = 1950 rpm/V\n'],
    ],
    [
      'moves from the last line of the script',
      '[gyro]\nkv = 1950 rpm/V',
      'unknown-name',
      ['[gyro]\n\n[motor]\nkv = 1950 rpm/V'],
    ],
    [
      'moves to the section for the same pack',
      '[pack.a]\n[motor]\n[gyro @ a]\nkv = 1950 rpm/V\n',
      'unknown-name',
      ['[pack.a]\n[motor]\n[gyro @ a]\n\n[motor @ a]\nkv = 1950 rpm/V\n'],
    ],
    [
      'moves to any pack that the craft has',
      '[gyro]\ncapacity = 550 mAh\n[pack.a]\n[pack.b]\n',
      'unknown-name',
      [
        '[gyro]\n[pack.a]\ncapacity = 550 mAh\n[pack.b]\n',
        '[gyro]\n[pack.a]\n[pack.b]\ncapacity = 550 mAh\n',
      ],
    ],
    ['stays where it is set already', '[motor]\nkv = 5 rpm/V\n[gyro]\nkv = 1950 rpm/V\n', 'unknown-name', []],
  ]);

  it('that is set already says where', () => {
    const text = '[motor]\nkv = 1900 rpm/V\n[gyro]\nkv = 1950 rpm/V\n';
    const found = findingsIn(text).find(({ id }) => id === 'line/unknown-name');
    assert.equal(found?.message, 'There is no parameter gyro.kv. Did you mean motor.kv?');
    assert.deepEqual(
      found?.related.map(({ line, message }) => [line, message]),
      [[1, 'motor.kv is set already here.']],
    );
  });
});

describe('quotes', () => {
  hold([
    ['are put round a text', '[craft]\nname = Sandmartin', 'wrong-shape', ['[craft]\nname = "Sandmartin"']],
    [
      'are put round several words',
      '[craft]\nname = Sand martin 2 # mine',
      'wrong-shape',
      ['[craft]\nname = "Sand martin 2" # mine'],
    ],
    ['become double ones', "[craft]\nname = 'Sandmartin'", 'wrong-shape', ['[craft]\nname = "Sandmartin"']],
    ['come off a word', '[receiver]\norder = "AETR"', 'wrong-shape', ['[receiver]\norder = AETR']],
    ['come off a word in capitals', '[receiver]\nlink = "CRSF"', 'wrong-shape', ['[receiver]\nlink = crsf']],
    [
      'come off an item of a list',
      '[receiver]\nreversed = [roll, "pitch"]',
      'wrong-shape',
      ['[receiver]\nreversed = [roll, pitch]'],
    ],
    ['come off a quantity', '[craft]\nmass = "212 g"', 'wrong-shape', ['[craft]\nmass = 212 g']],
    [
      'are no part of the word to look at where nothing fits without them',
      '[receiver]\nlink = "somehow"',
      'wrong-shape',
      ['[receiver]\nlink = sbus  # to check: what it really is'],
    ],
  ]);
});

describe('two readings, and brackets', () => {
  hold([
    [
      'a comma before three digits',
      '[craft]\nmass = 1,212 g',
      'decimal-comma',
      ['[craft]\nmass = 1212 g', '[craft]\nmass = 1.212 g'],
    ],
    [
      'a list that is not closed',
      '[overlay.name]\nplace = [12, 22 # left',
      'not-understood',
      ['[overlay.name]\nplace = [12, 22] # left'],
    ],
    ['a list with something else in it', '[overlay.name]\nplace = [12, 22 = 3', 'not-understood', []],
  ]);
});

describe('two ports for one device', () => {
  const text = '[board]\nprofile = heron\n[receiver]\nport = [uart2, uart3]';

  hold([
    [
      'are each offered',
      text,
      'wrong-shape',
      [text.replace('[uart2, uart3]', 'uart2'), text.replace('[uart2, uart3]', 'uart3')],
    ],
  ]);

  it('are told by the device', () => {
    assert.equal(
      messageOf(text, 'wrong-shape'),
      'Found a list of 2; expected a single port: the receiver has one port.',
    );
  });
});

describe('a minus without spaces', () => {
  hold([
    [
      'after a constant',
      'let a = 100 Hz\n[gyro.filter.1]\ncutoff = a-20 Hz',
      'minus-spacing',
      ['let a = 100 Hz\n[gyro.filter.1]\ncutoff = a - 20 Hz'],
    ],
    [
      'between two constants',
      'let a = 100 Hz\nlet b = 3 Hz\n[gyro.filter.1]\ncutoff = a-b',
      'minus-spacing',
      ['let a = 100 Hz\nlet b = 3 Hz\n[gyro.filter.1]\ncutoff = a - b'],
    ],
    [
      'after a parameter, in a constant',
      '[gyro]\nrate = 8 kHz\nlet low = gyro.rate-20 Hz',
      'minus-spacing',
      ['[gyro]\nrate = 8 kHz\nlet low = gyro.rate - 20 Hz'],
    ],
    ['is part of a name that nothing defines', '[gyro.filter.1]\ncutoff = a-20 Hz', 'minus-spacing', []],
  ]);

  it('brings no second finding', () => {
    const ids = findingsIn('let a = 100 Hz\n[gyro.filter.1]\ncutoff = a-20 Hz').map(({ id }) => id);
    assert.deepEqual(
      ids.filter((id) => id.startsWith('line/')),
      ['line/minus-spacing'],
    );
  });
});

describe('lines that say the same', () => {
  const advice = (text: string) => findingsIn(text).find(({ id }) => id === 'line/set-twice')?.advice;
  const packs = '[pack.a]\n[pack.b]\n';

  it('are told of a section for one pack only where that helps', () => {
    const twice = 'rate = 8 kHz\nrate = 4 kHz\n';
    assert.match(advice(`${packs}[gyro]\n${twice}`) ?? '', /belongs under \[… @ pack\]/);
    assert.equal(advice(`${packs}[gyro @ a]\n${twice}`), 'Keep one of the two lines.');
    assert.equal(advice(`[gyro]\n${twice}`), 'Keep one of the two lines.');
  });
});

describe('an include of nothing', () => {
  it('is told so', () => {
    assert.equal(
      messageOf('include ""', 'include-refused'),
      "An empty text can't be included: it names no script.",
    );
  });
});
