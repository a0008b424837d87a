import { holdReadings } from '../../../support/listing-cases';

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
  holdReadings(lines.map((two) => ({ what: two[0], text: two.join('\n'), says })));
  holdReadings([
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
  holdReadings([
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
  holdReadings([
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

describe('groups', () => {
  const says = `
    north › tern = 5
    north › plover = soft
    south › tern = 6
    south › plover = steep
  `;
  holdReadings([
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

describe('a heading with a single mark before it', () => {
  holdReadings([
    {
      what: 'where its settings stand further in',
      text: `
        @roll
          strength -> 47
          limit -> 30

        @yaw
          strength -> 60
      `,
      says: `
        roll › strength = 47
        roll › limit = 30
        yaw › strength = 60
      `,
    },
  ]);
});
