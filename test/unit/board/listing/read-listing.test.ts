import { holdReadings } from '../../../support/listing-cases';

describe('a listing of plain lines', () => {
  const says = `
    tern-speed = 12
    plover-mode = soft
    willow-gain = -0.75
    raven-mask = 0x1F
  `;
  holdReadings(
    [' = ', '=', ': ', ' ', ',', '\t', ' := ', ' -> ', '  ', ' ..... '].map((between) => ({
      what: `with ${JSON.stringify(between)} between name and value`,
      text: says.replaceAll(' = ', between),
      says,
    })),
  );
  holdReadings([
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

describe('names', () => {
  holdReadings([
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
  holdReadings([
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
