import assert from 'node:assert/strict';
import { UnreadableRecording } from '../../../server/src/recording/read/source';
import { Random } from '../../simulator/random';
import { readFrom, sourceOf } from '../../support/recorded';
import { holdsTogether } from '../../support/sound-recording';

const headings = 'seconds,gyro roll [deg/s],motor 1 [%],voltage [V]';

interface Line {
  readonly time: number;
  readonly motor?: number;
}

/** A hundred rows a second; the time first. */
function lines(from: number, count: number, motor = 0.5): readonly Line[] {
  return Array.from({ length: count }, (_, row) => ({ time: from + row / 100, motor }));
}

function text(rows: readonly Line[], head = headings): string {
  const written = rows.map(
    ({ time, motor = 0 }, row) =>
      `${time.toFixed(2)},${((row * 37) % 111) - 55},${100 * motor},16.${row % 10}`,
  );
  return [head, ...written].map((line) => `${line}\n`).join('');
}

const whole = text(lines(0, 400));
const encoded = (of: string) => new TextEncoder().encode(of);

const notText = /^This file is not a text; /;

/** Nothing can be told of these, and they say why and how to mend it. */
const unreadable: readonly (readonly [title: string, bytes: Uint8Array | string, says: RegExp])[] = [
  ['empty', '', /^The file is empty; /],
  ['empty but for line ends', '\r\n\n\n\n', /^The file is empty; /],
  ['empty but for comments', '# simulated\n# by nobody\n', /^The file holds nothing but comments; /],
  ['headings alone', `${headings}\n`, /^The file holds 4 headings and no rows; /],
  ['headings that were cut off', headings, /headings and no (?:whole )?rows?; |^No rows of numbers/],
  ['one row', text(lines(0, 1)), /^The file holds one row, and one row tells nothing; /],
  ['a text', 'Dear pilot,\nthe log is on the other card.\n\nYours\n', /^No rows of numbers were found/],
  ['binary', random(40_000), notText],
  ['binary that begins like a picture', concat([137, 80, 78, 71, 13, 10, 26, 10], random(4000)), notText],
  ['nothing but zero bytes', new Uint8Array(70_000), notText],
  [
    'two bytes a character, and said so',
    Uint8Array.from(Buffer.from(`\ufeff${whole}`, 'utf16le')),
    /UTF-16; save it/,
  ],
  ['two bytes a character', Uint8Array.from(Buffer.from(whole, 'utf16le')), notText],
  ['a separator that no table has', whole.replaceAll(',', '|'), /^No rows of numbers/],
  [
    'a time that stands still',
    text(lines(0, 400).map((line) => ({ ...line, time: 5 }))),
    /No column is known to hold the time;.*“seconds”/,
  ],
  [
    'no number in any row',
    `${headings}\n${'nan,nan,nan,nan\n'.repeat(50)}`,
    /^No rows of numbers|does not rise/,
  ],
  ['one line without an end', 'gyro '.repeat(2_000_000), /^A line goes on for more than/],
];

function random(length: number): Uint8Array {
  const chance = new Random(20);
  return Uint8Array.from({ length }, () => Math.floor(256 * chance.unit()));
}

function concat(head: readonly number[], rest: Uint8Array): Uint8Array {
  return Uint8Array.from([...head, ...rest]);
}

interface Mended {
  readonly rows: number;
  readonly flights: number;
  readonly stretches: number;
  readonly says: RegExp | null;
}

/** These are read, and what is left out of them is said. */
const readable: readonly (readonly [title: string, text: string, is: Mended])[] = [
  ['a whole file', whole, { rows: 400, flights: 1, stretches: 1, says: null }],
  [
    'a file with a mark of its encoding',
    `\ufeff${whole}`,
    { rows: 400, flights: 1, stretches: 1, says: null },
  ],
  [
    'a last line that is cut off',
    whole.slice(0, -9),
    { rows: 399, flights: 1, stretches: 1, says: /cut off: left out/ },
  ],
  [
    'a gap',
    text([...lines(0, 300), ...lines(4.5, 300)]),
    { rows: 600, flights: 1, stretches: 2, says: /^A gap in the rows.*1\.5/ },
  ],
  [
    'times that begin anew',
    text([...lines(70, 300), ...lines(1, 300)]),
    { rows: 600, flights: 2, stretches: 2, says: null },
  ],
  [
    'headings that come again',
    text(lines(0, 300)) + text(lines(0, 300)),
    { rows: 600, flights: 2, stretches: 2, says: null },
  ],
  [
    'two flights with a rest between',
    text([...lines(0, 300), ...lines(3, 1200, 0), ...lines(15, 300)]),
    { rows: 1800, flights: 2, stretches: 2, says: null },
  ],
  [
    'rows that fall back by one',
    text(lines(0, 400).map((line, row) => (row === 200 ? { ...line, time: 1.5 } : line))),
    { rows: 399, flights: 1, stretches: 2, says: /left out/ },
  ],
  [
    'a row with a cell too many, one with too few',
    whole.replace('\n1.00,', '\n7,1.00,').replace('\n2.00,', '\n'),
    { rows: 398, flights: 1, stretches: 3, says: /^2 rows have more or fewer cells/ },
  ],
  [
    'cells that hold no number',
    whole.replaceAll(',16.3\n', ',nan\n').replaceAll(',16.4\n', ',\n').replace(',16.5\n', ',sixteen\n'),
    { rows: 400, flights: 1, stretches: 1, says: /^A cell holds no number/ },
  ],
  [
    'a number that nothing can be',
    whole.replace(',16.3\n', ',1e999\n'),
    { rows: 400, flights: 1, stretches: 1, says: /^A cell holds no number/ },
  ],
  [
    'lines that end as on old systems',
    whole.replaceAll('\n', '\r'),
    { rows: 400, flights: 1, stretches: 1, says: null },
  ],
  [
    'lines that end as on others',
    whole.replaceAll('\n', '\r\n'),
    { rows: 400, flights: 1, stretches: 1, says: null },
  ],
  [
    'a hundred columns',
    wide(100, 300),
    { rows: 300, flights: 1, stretches: 1, says: /^Not read, since they never change: “servo 0”/ },
  ],
];

function wide(columns: number, rows: number): string {
  const names = Array.from({ length: columns - 4 }, (_, at) => `servo ${at}`);
  return text(lines(0, rows), `${headings},${names.join(',')}`)
    .split('\n')
    .map((line, at) => (line === '' || at === 0 ? line : `${line}${',7'.repeat(columns - 4)}`))
    .join('\n');
}

const read = (bytes: Uint8Array, piece?: number) => readFrom(sourceOf('bad.csv', bytes, piece));

describe('a recording that is bad', () => {
  for (const [title, content, says] of unreadable)
    it(`${title}: says why nothing is told, and how to mend it`, async () => {
      const bytes = typeof content === 'string' ? encoded(content) : content;
      const reason = await read(bytes).then(
        () => assert.fail('it was read'),
        (error: unknown) => error,
      );
      assert.ok(reason instanceof UnreadableRecording, String(reason));
      assert.match(reason.message, says);
      assert.match(reason.message, /[a-z)”]\.$/, 'a finished sentence');
    });

  for (const [title, content, { rows, flights, stretches, says }] of readable)
    it(`${title}: is read, and says what is left out`, async () => {
      const recording = await read(encoded(content));
      assert.equal(recording.time.length, rows);
      assert.equal(recording.flights.length, flights);
      assert.equal(recording.flights.flatMap((flight) => flight.stretches).length, stretches);
      if (says === null) assert.deepEqual(recording.leftOut, []);
      else
        assert.ok(
          recording.leftOut.some((sentence) => says.test(sentence)),
          recording.leftOut.join('\n'),
        );
      holdsTogether(recording);
    });

  it('is read alike in whatever pieces its bytes come', async () => {
    for (const [, content] of readable) {
      const expected = await read(encoded(content));
      for (const piece of [1, 7, 4096]) assert.deepEqual(await read(encoded(content), piece), expected);
    }
  });

  it('is left when somebody says so, with what they say', async () => {
    const reason = new Error('enough');
    const turns: number[] = [];
    const pace = {
      turn: (bytes: number) => {
        turns.push(bytes);
        return bytes > 1_000_000 ? Promise.reject(reason) : undefined;
      },
    };
    const long = encoded(headings.concat('\n', '1,2,3,4\n'.repeat(1_000_000)));
    await assert.rejects(readFrom(sourceOf('long.csv', long), [], pace), reason);
    assert.ok((turns.at(-1) ?? 0) < 3_000_000);
  });
});
