import { strict as assert } from 'node:assert';
import { rendered } from '../../../support/rendered-listing';

interface Case {
  readonly what: string;
  readonly text: string;
  readonly says: string;
}

function hold(cases: readonly Case[]): void {
  for (const { what, text, says } of cases)
    it(what, () => assert.equal(rendered(trimmed(text)), trimmed(says)));
}

/** A text block without its first line end and its indent. */
function trimmed(block: string): string {
  const lines = block.replace(/^\n/, '').trimEnd().split('\n');
  const indents = lines.filter((line) => line.trim() !== '').map((line) => /^ */.exec(line)?.[0].length ?? 0);
  const indent = Math.min(...indents);
  return lines.map((line) => line.slice(indent)).join('\n');
}

describe('a listing of plain lines', () => {
  const says = `
    tern-speed = 12
    plover-mode = soft
    willow-gain = -0.75
    raven-mask = 0x1F
  `;
  hold(
    [' = ', '=', ': ', ' ', ',', '\t', ' := ', ' -> ', '  ', ' ..... '].map((between) => ({
      what: `with ${JSON.stringify(between)} between name and value`,
      text: says.replaceAll(' = ', between),
      says,
    })),
  );
  hold([
    {
      what: 'of one line',
      text: 'tern-speed = 12',
      says: 'tern-speed = 12',
    },
    {
      what: 'of two lines',
      text: 'tern-speed 12\nwillow-gain 7',
      says: 'tern-speed = 12\nwillow-gain = 7',
    },
    {
      what: 'in a sentence',
      text: `
        tilt of tern is 40;
        mode of plover is "calm sky";
        willow count is 0;
      `,
      says: `
        tilt of tern = 40
        mode of plover = "calm sky"
        willow count = 0
      `,
    },
    {
      what: 'with values before names',
      text: `
        1.5 -> tern
        -3 -> plover
        1.5 -> willow
      `,
      says: `
        tern = 1.5
        plover = -3
        willow = 1.5
      `,
    },
    {
      what: 'with a number before each',
      text: `
        1) tern: 5
        2) plover: soft
        3) willow: 7
      `,
      says: `
        tern = 5
        plover = soft
        willow = 7
      `,
    },
    {
      what: 'with several forms',
      text: `
        tern = 5
        plover = soft
        lap: 3
        willow = 7
      `,
      says: `
        tern = 5
        plover = soft
        lap = 3
        willow = 7
      `,
    },
  ]);
});

describe('settings behind the word that they belong to', () => {
  const says = `
    roll › P = 47
    roll › I = 30
    roll › D = 22
    yaw › P = 60
    yaw › I = 40
    yaw › D = 0
  `;
  const lines: readonly (readonly [string, string])[] = [
    ['roll P=47 I=30 D=22', 'yaw P=60 I=40 D=0'],
    ['roll: P=47 I=30 D=22', 'yaw: P=60 I=40 D=0'],
    ['roll: P 47 I 30 D 22', 'yaw: P 60 I 40 D 0'],
    ['roll: P:47 I:30 D:22', 'yaw: P:60 I:40 D:0'],
    ['roll P 47 I 30 D 22', 'yaw P 60 I 40 D 0'],
    ['roll   P:47  I:30  D:22', 'yaw    P:60  I:40  D:0'],
    ['roll P=47, I=30, D=22', 'yaw P=60, I=40, D=0'],
    ['[roll] P=47 I=30 D=22', '[yaw] P=60 I=40 D=0'],
    ['roll = P:47 I:30 D:22', 'yaw = P:60 I:40 D:0'],
  ];
  hold(lines.map((two) => ({ what: two[0], text: two.join('\n'), says })));
  hold([
    {
      what: 'where most lines hold one setting',
      text: `
        speed = 5
        mode = soft
        craft name = "calm sky"
        roll P=47 I=30
        yaw P=60 I=40
        lap = 12
        lap sound = on
        tilt = 4.5
      `,
      says: `
        speed = 5
        mode = soft
        craft name = "calm sky"
        roll › P = 47
        roll › I = 30
        yaw › P = 60
        yaw › I = 40
        lap = 12
        lap sound = on
        tilt = 4.5
      `,
    },
    {
      what: 'in names, with a mark between two settings and a blank before each value',
      text: 'roll.P 47; roll.I 30; roll.D 22\nyaw.P 60; yaw.I 40; yaw.D 0',
      says,
    },
    {
      what: 'in a row, called as the columns above them are',
      text: `
        Lane    Bird        From   Upto
        5       tern        1700   2100
        6       plover      1300   1700
        7       oystercatcher 900    1300
      `,
      says: `
        tern › Lane = 5
        tern › From = 1700
        tern › Upto = 2100
        plover › Lane = 6
        plover › From = 1300
        plover › Upto = 1700
        oystercatcher › Lane = 7
        oystercatcher › From = 900
        oystercatcher › Upto = 1300
      `,
    },
    {
      what: 'in a row, called as the quoted columns above them are',
      text: '"Bird","From","Upto"\n"tern",1700,2100\n"plover",1300,1700',
      says: 'tern › From = 1700\ntern › Upto = 2100\nplover › From = 1300\nplover › Upto = 1700',
    },
    {
      what: 'with the number of each member',
      text: `
        lamp 1 pin 4 turn cw level 5
        lamp 2 pin 5 turn ccw level 5
        lamp 3 pin 6 turn cw level 5
      `,
      says: `
        lamp › 1 › pin = 4
        lamp › 1 › turn = cw
        lamp › 1 › level = 5
        lamp › 2 › pin = 5
        lamp › 2 › turn = ccw
        lamp › 2 › level = 5
        lamp › 3 › pin = 6
        lamp › 3 › turn = cw
        lamp › 3 › level = 5
      `,
    },
  ]);
});

describe('groups in braces', () => {
  const says = `
    motor › left › pin = 4
    motor › left › turn = cw
    motor › idle = 5
    gyro › rate = 8000
  `;
  hold([
    {
      what: 'in one line',
      text: `
        motor { left { pin 4; turn cw }; idle 5 }
        gyro { rate 8000 }
      `,
      says,
    },
    {
      what: 'with marks behind names and commas between settings',
      text: `
        motor: { left: { pin: 4, turn: cw }, idle: 5 }
        gyro: { rate: 8000 }
      `,
      says,
    },
    {
      what: 'some in one line, some over several',
      text: `
        motor {
          left { pin = 4; turn = cw; }
          idle = 5;
        }
        gyro { rate = 8000; }
      `,
      says,
    },
    {
      what: 'that open and close beside settings',
      text: `
        motor { left { pin = 4;
            turn = cw; }
          idle = 5; }
        gyro { rate = 8000; }
      `,
      says,
    },
    {
      what: 'that open in a line of their own',
      text: `
        motor
        {
          left
          {
            pin = 4
            turn = cw
          }
          idle = 5
        }
        gyro
        {
          rate = 8000
        }
      `,
      says,
    },
    {
      what: 'beside values in braces and quotes',
      text: `
        gyro { list = { 1 2 3 }; motto = "a { b; c" }  # quick
        motor { pins = { 4 5 } }
      `,
      says: `
        gyro › list = { 1 2 3 }
        gyro › motto = "a { b; c"
        motor › pins = { 4 5 }
      `,
    },
  ]);
});

describe('headings that are comments', () => {
  const says = `
    gyro › rate = 8000
    gyro › soft = on
    receiver › rate = 48
    receiver › idle = 5
  `;
  const written = ['# --- @ ---', '; [@]', '// @', '## @ ##', '#\n# @\n#', '-- @:'];
  hold([
    ...written.map((form) => ({
      what: `such as ${JSON.stringify(form.replace('@', 'gyro'))}`,
      text: [
        form.replace('@', 'gyro'),
        'rate = 8000',
        'soft = on',
        '',
        form.replace('@', 'receiver'),
        'rate = 48',
        'idle = 5',
      ].join('\n'),
      says,
    })),
    {
      what: 'and comments that say something of one setting',
      text: `
        # --- gyro ---
        # changed in spring
        rate = 8000
        # how soft
        soft = on
        # --- receiver ---
        rate = 48
        # idle = 4
        idle = 5
      `,
      says,
    },
    {
      what: 'but not where each stands above one of settings that follow each other',
      text: `
        # gyro
        rate = 8000
        # soft
        soft = on
        # receiver
        rate = 48
      `,
      says: `
        rate = 8000
        soft = on
        rate (2) = 48
      `,
    },
  ]);
});

describe('what brackets say between a name and its value', () => {
  const says = `
    tern = 4  (1 to 8; in kHz)
    plover = soft  (soft|hard)
    lap count = 12
  `;
  hold([
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

describe('what a board says around its settings', () => {
  const says = `
    speed = 5
    mode = soft
    gain top = 4.5
    lap = on
  `;
  hold([
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

describe('names', () => {
  hold([
    {
      what: 'with blanks, where only blanks follow',
      text: `
        tern speed 12
        tern mode soft
        willow gain limit 7
        plover count 0
      `,
      says: `
        tern speed = 12
        tern mode = soft
        willow gain limit = 7
        plover count = 0
      `,
    },
    {
      what: 'of digits only',
      text: '117 = 5\n120 = soft\n131 = 0x10',
      says: '117 = 5\n120 = soft\n131 = 0x10',
    },
    {
      what: 'of digits that count on from 1',
      text: '1 = 5\n2 = soft\n3 = 0x10\n4 = 8',
      says: '1 = 5\n2 = soft\n3 = 0x10\n4 = 8',
    },
    {
      what: 'in quotes, with what parts names from values in them',
      text: '"tern = a" = 5\n"plover" = 6',
      says: 'tern = a = 5\nplover = 6',
    },
    {
      what: 'of any alphabet, with marks',
      text: 'Höhe α: 1,5\n@größe/2: 12\nдлина: on',
      says: 'Höhe α = 1,5\n@größe/2 = 12\nдлина = on',
    },
    {
      what: 'with a number in brackets',
      text: 'tern[0] <= 5\ntern[1] <= 6\nwillow <= 7',
      says: 'tern[0] = 5\ntern[1] = 6\nwillow = 7',
    },
    {
      what: 'with dots behind them up to a colon, below the word for a group',
      text: `
        ## tern unit, seen on a calm day
        SECTION north
           tern............: 3200
           plover..........: 110 Hz      <10 - 500>
        SECTION south
           willow..........: lane 1
        SECTION end
      `,
      says: `
        north › tern = 3200
        north › plover = 110  (10 to 500; in Hz)
        south › willow = lane 1
      `,
    },
    {
      what: 'that come back',
      text: 'port = 1\nport = 2\nrate = 5\nport = 1',
      says: 'port = 1\nport (2) = 2\nrate = 5\nport (3) = 1',
    },
  ]);
});

describe('values', () => {
  hold([
    {
      what: 'no mark alone, where names and values stand in turn in other lines',
      text: 'tern = 5\nplover: p 4 i 5 d 6\nwillow: p 7 i 8 d 9\nraven = lane 5 from 17 to 21\nquill = lane 7 from 15 to 21',
      says: `
        tern = 5
        plover › p = 4
        plover › i = 5
        plover › d = 6
        willow › p = 7
        willow › i = 8
        willow › d = 9
        raven = lane 5 from 17 to 21
        quill = lane 7 from 15 to 21
      `,
    },
    {
      what: 'that begin with a number which counts them',
      text: 'tern 0 1.0 -1.0 1.0\ntern 1 1.0 1.0 1.0\nplover 0 10 25 50\nlane 1 raven 420000\nlane 2 quill 115200',
      says: `
        tern = 0 1.0 -1.0 1.0
        tern (2) = 1 1.0 1.0 1.0
        plover = 0 10 25 50
        lane = 1 raven 420000
        lane (2) = 2 quill 115200
      `,
    },
    {
      what: 'that are on behind one mark and off behind another',
      text: '+tern_echo\n-plover\n+willow\nraven=5\nquill=6',
      says: 'tern_echo = on\nplover = off\nwillow = on\nraven = 5\nquill = 6',
    },
    {
      what: 'that are on and off behind a mark and a blank',
      text: '- tern\n- plover\n+ willow\n+ raven\nquill = 5',
      says: 'tern = off\nplover = off\nwillow = on\nraven = on\nquill = 5',
    },
    {
      what: 'that are on and off behind marks, several in a line',
      text: '+tern -plover\n+willow -raven +quill',
      says: 'tern = on\nplover = off\nwillow = on\nraven = off\nquill = on',
    },
    {
      what: 'several of one setting',
      text: 'tern 1 2 3\nplover 4 5 6\nwillow 7 8 9',
      says: 'tern = 1 2 3\nplover = 4 5 6\nwillow = 7 8 9',
    },
    {
      what: 'lists, texts in quotes with marks in them, and none',
      text: 'tern = 1, 2, 3\nplover = "a # b = c"\nwillow =\nraven = ""\nquill = x',
      says: 'tern = 1, 2, 3\nplover = "a # b = c"\nwillow = \nraven = ""\nquill = x',
    },
    {
      what: 'that hold what parts names from values',
      text: 'tern = a=b\nplover = c = d\nwillow = 5',
      says: 'tern = a=b\nplover = c = d\nwillow = 5',
    },
    {
      what: 'several settings a line',
      text: 'tern=1 plover=2 willow=3\nraven=4 quill=5',
      says: 'tern = 1\nplover = 2\nwillow = 3\nraven = 4\nquill = 5',
    },
    {
      what: 'several settings a line, with semicolons',
      text: 'tern count = 1; plover = "a; b"; willow = 3;\nraven = 4; quill mode = soft;',
      says: 'tern count = 1\nplover = "a; b"\nwillow = 3\nraven = 4\nquill mode = soft',
    },
    {
      what: 'names alone, on and off',
      text: 'tern -plover willow\n-raven quill -otter',
      says: 'tern = on\nplover = off\nwillow = on\nraven = off\nquill = on\notter = off',
    },
    {
      what: 'names alone, a line each',
      text: 'tern\nno plover\nwillow\nno raven',
      says: 'tern = on\nplover = off\nwillow = on\nraven = off',
    },
    {
      what: 'that go on in the next line',
      text: 'tern = 5\nplover = soft \\\n   and steep\nwillow = 7',
      says: 'tern = 5\nplover = soft and steep\nwillow = 7',
    },
    {
      what: 'that go on further in',
      text: 'Tern: 5\nPlover: a bird of\n the shore,\n brown and white\nWillow: 7',
      says: 'Tern = 5\nPlover = a bird of the shore, brown and white\nWillow = 7',
    },
  ]);
});

describe('groups', () => {
  const says = `
    north › tern = 5
    north › plover = soft
    south › tern = 6
    south › plover = steep
  `;
  hold([
    {
      what: 'between brackets',
      text: '[north]\ntern = 5\nplover = soft\n\n[south]\ntern = 6\nplover = steep',
      says,
    },
    {
      what: 'behind a word',
      text: 'in north:\ntern is 5;\nplover is soft;\nin south:\ntern is 6;\nplover is steep;',
      says,
    },
    {
      what: 'by indent',
      text: 'north\n  tern 5\n  plover soft\nsouth\n  tern 6\n  plover steep',
      says,
    },
    {
      what: 'by indent, with a colon',
      text: 'north:\n\ttern: 5\n\tplover: soft\nsouth:\n\ttern: 6\n\tplover: steep',
      says,
    },
    {
      what: 'in braces',
      text: 'north {\n  tern = 5\n  plover = soft\n}\nsouth {\n  tern = 6\n  plover = steep\n}',
      says,
    },
    {
      what: 'between rows of marks',
      text: '==== north ====\ntern ~> 5\nplover ~> soft\n==== south ====\ntern ~> 6\nplover ~> steep',
      says,
    },
    {
      what: 'alone above a paragraph',
      text: 'NORTH\ntern = 5\nplover = soft\n\nSOUTH\ntern = 6\nplover = steep',
      says: says.replaceAll('north', 'NORTH').replaceAll('south', 'SOUTH'),
    },
    {
      what: 'in the name',
      text: 'north/tern <- 5\nnorth/plover <- soft\nsouth/tern <- 6\nsouth/plover <- steep',
      says,
    },
    {
      what: 'in front of the name',
      text: 'north: tern -> 5\nnorth: plover -> soft\nsouth: tern -> 6\nsouth: plover -> steep',
      says,
    },
    {
      what: 'in each other',
      text: 'north:\n  coast:\n    tern: 5\n  tern: 6\nsouth:\n  tern: 7',
      says: 'north › coast › tern = 5\nnorth › tern = 6\nsouth › tern = 7',
    },
    {
      what: 'in each other, in braces',
      text: 'north {\n coast {\n  tern = 5\n }\n tern = 6\n}\ntern = 7',
      says: 'north › coast › tern = 5\nnorth › tern = 6\ntern = 7',
    },
  ]);
});

describe('what a listing says beside values', () => {
  hold([
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
