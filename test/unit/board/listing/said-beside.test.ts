import assert from 'node:assert/strict';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { holdReadings } from '../../../support/listing-cases';

describe('what brackets say between a name and its value', () => {
  const says = `
    tern = 4  (1 to 8; in kHz)
    plover = soft  (soft|hard)
    lap count = 12
  `;
  holdReadings([
    ...[': ', ' = '].map((between) => ({
      what: `with ${JSON.stringify(between)} behind them`,
      text: `
        tern (1..8) [kHz] = 4
        plover (soft|hard) = soft
        lap count = 12
      `.replaceAll(' = ', between),
      says,
    })),
    {
      what: 'where only blanks follow',
      text: `
        tern <1-8> [kHz]      4
        plover <soft | hard>  soft
        lap count             12
      `,
      says,
    },
    {
      what: 'of which some is part of a name',
      text: `
        CPU(s): 4
        point (x, y): 3, 4
        part (left): 7
      `,
      says: `
        CPU(s) = 4
        point (x, y) = 3, 4
        part (left) = 7
      `,
    },
  ]);
});

describe('what a listing says beside values', () => {
  holdReadings([
    {
      what: 'behind a doubled mark of comments',
      text: `
        ;; all of it
        tern = 3200 ;; 1600 | 3200
        plover = soft ;; hard | soft
        lap = 12 ;; 0 .. 90
      `,
      says: `
        tern = 3200  (1600|3200)
        plover = soft  (hard|soft)
        lap = 12  (0 to 90)
      `,
    },
    {
      what: 'ranges in brackets',
      text: 'tern: 5 [0..10]\nplover: soft\nwillow: -1 [-5..5]',
      says: 'tern = 5  (0 to 10)\nplover = soft\nwillow = -1  (-5 to 5)',
    },
    {
      what: 'words in braces, of which the value is one or not',
      text: 'tern = soft {soft|steep}\nplover = stepe {soft|steep}\nwillow = 5',
      says: 'tern = soft  (soft|steep)\nplover = stepe  (soft|steep)\nwillow = 5',
    },
    {
      what: 'range, default and unit together, and a remark',
      text: 'tern = 5 (0 to 10 Hz, default 7)\nplover = 6 (1 to 9 Hz, default 3) # how fast',
      says: 'tern = 5  (0 to 10; else 7; in Hz)\nplover = 6  (1 to 9; else 3; in Hz; "how fast")',
    },
    {
      what: 'units',
      text: 'tern = 5 Hz\nplover = 60 %\nwillow = soft\nraven = 5Hz',
      says: 'tern = 5  (in Hz)\nplover = 60  (in %)\nwillow = soft\nraven = 5Hz',
    },
    {
      what: 'words for the ends',
      text: 'tern = 5 min 0 max 10\nplover = 6 min 1 max 9',
      says: 'tern = 5  (0 to 10)\nplover = 6  (1 to 9)',
    },
    {
      what: 'no limits of what is no number',
      text: 'tern = 5\nplover = lane 5 from 17 to 21\nwillow = lane 7 from 15 to 21',
      says: 'tern = 5\nplover = lane 5 from 17 to 21\nwillow = lane 7 from 15 to 21',
    },
    {
      what: 'no limits that most values break',
      text: 'tern = 5\nplover = 5 from 17 to 21\nwillow = 7 from 15 to 21',
      says: 'tern = 5\nplover = 5 from 17 to 21\nwillow = 7 from 15 to 21',
    },
    {
      what: 'a unit behind the range',
      text: 'tern = 5   (0 .. 9) Hz\nplover = 6 (1 .. 9) Hz',
      says: 'tern = 5  (0 to 9; in Hz)\nplover = 6  (1 to 9; in Hz)',
    },
    {
      what: 'in German',
      text: 'tern = 5 (0 bis 10, Vorgabe 7)\nplover = weich (weich, steil)',
      says: 'tern = 5  (0 to 10; else 7)\nplover = weich  (weich|steil)',
    },
  ]);
});

describe('a remark behind a semicolon that few lines have', () => {
  it('is none of the value, be it a word or a unit, where brackets say something before it', () => {
    const lines = Array.from(
      { length: 12 },
      (_, index) => `entry ${index + 1} := ${index} [0..90] (default 4)`,
    );
    const text = [
      ...lines,
      'wake wait := 25 [0..500] (default 25)  ; 0.01 s',
      'cap := 9 [0..10] (default 9) ; permille',
    ];
    const { settings } = readListing(text.join('\n'), null);
    assert.deepEqual(
      settings
        .slice(-2)
        .map(({ value, stated }) => [value, stated?.range?.high, stated?.default, stated?.remark]),
      [
        ['25', '500', '25', '0.01 s'],
        ['9', '10', '9', 'permille'],
      ],
    );
    const list = readListing('one := 3 ; 4 ; 5\ntwo := 7\nthree := 8\nfour := 9\nfive := 1\n', null);
    assert.equal(list.settings[0]?.value, '3 ; 4 ; 5');
  });
});
