import { strict as assert } from 'node:assert';
import { holdReadings } from '../../../support/listing-cases';
import { rendered } from '../../../support/rendered-listing';

describe('what a board says around its settings', () => {
  const says = `
    speed = 5
    mode = soft
    gain top = 4.5
    lap = on
  `;
  holdReadings([
    {
      what: 'before columns',
      text: `
        welcome to kestrel
        version 2.1

        speed       5
        mode        soft
        gain top    4.5
        lap         on
      `,
      says,
    },
    {
      what: 'before and behind columns',
      text: `
        Kestrel, second of its kind
        speed       5
        mode        soft
        gain top    4.5
        lap         on
        goodbye
      `,
      says,
    },
    {
      what: 'where names and values are words in a line as well',
      text: `
        KESTREL 1.0 ready
        Type menu for a list of commands
        speed 5
        mode soft
        gain top 4.5
        lap on
      `,
      says,
    },
    {
      what: 'in a word that begins them and one that ends them',
      text: `
        begin
        speed = 5
        mode = soft
        gain top = 4.5
        lap = on
        end
      `,
      says,
    },
    {
      what: 'in a word that begins them, and a sum that ends them',
      text: `
        begin
        speed = 5
        mode = soft
        gain top = 4.5
        lap = on
        end sum 3A9C
      `,
      says,
    },
    {
      what: 'but not in words where others are settings',
      text: `
        begin
        speed = 5
        log
        mode = soft
        end
      `,
      says: `
        begin = on
        speed = 5
        log = on
        mode = soft
        end = on
      `,
    },
    {
      what: 'in fewer words than it has settings of text',
      text: `
        motto = calm green sea
        speed = 5
        mode = soft
      `,
      says: `
        motto = calm green sea
        speed = 5
        mode = soft
      `,
    },
  ]);
});

describe('what is no setting', () => {
  it('never a line with a mark before it, such as what was changed', () => {
    const text = '  tern   5\n* plover 6\n  willow 7\n* raven  8\n  finch  9\n';
    assert.equal(rendered(text), 'tern = 5\nplover = 6\nwillow = 7\nraven = 8\nfinch = 9');
    assert.equal(rendered('tern   5\n* how fast it is\nwillow 7\n* of all\n'), 'tern = 5\nwillow = 7');
  });

  it('comments, as many as settings', () => {
    const text = '# how fast\ntern = 5\n# how soft\nplover = soft\n# none = 5';
    assert.equal(rendered(text), 'tern = 5\nplover = soft');
  });

  it('a time before each line, a mark at the start, mixed line ends', () => {
    const text = '\ufeff[12:03:44] tern = 5\r\n[12:03:44] plover = soft\n[12:03:45] willow = 7\r';
    assert.equal(rendered(text), 'tern = 5\nplover = soft\nwillow = 7');
  });

  it('a time behind marks that say where the line came from', () => {
    const text =
      '>>> 14:02:11.120 north.tern -> 5\n>>> 14:02:11.122 north.plover -> soft\n>>> 14:02:12.9 south.tern -> 7';
    assert.equal(rendered(text), 'north › tern = 5\nnorth › plover = soft\nsouth › tern = 7');
  });

  it('a number before every line, settings or not', () => {
    assert.equal(
      rendered('1  # head\n2  tern = 5\n3  plover = soft\n4  willow = 7'),
      'tern = 5\nplover = soft\nwillow = 7',
    );
  });

  it('colours, and what was written over', () => {
    const text =
      '\u001b[32mtern\u001b[0m = \u001b[1m5\u001b[0m\n--More--\r        \rplover = soft\nwillow = 6\b7\n';
    assert.equal(rendered(text), 'tern = 5\nplover = soft\nwillow = 7');
  });

  it('prompts and what was typed behind them', () => {
    assert.equal(rendered('dipper> show all\ntern = 5\nplover = soft\ndipper> '), 'tern = 5\nplover = soft');
    assert.equal(
      rendered(
        'dipper> show all\nnorth> tern: 5\nnorth> plover: soft\nsouth> tern: 6\nsouth> plover: 7\ndipper> ',
      ),
      'north › tern = 5\nnorth › plover = soft\nsouth › tern = 6\nsouth › plover = 7',
    );
  });
});
