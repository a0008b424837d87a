import fc from 'fast-check';
import { anyText, slipped } from './texts';

/** What a heading may say, in words of many loggers and of none. */
const words = [
  ...[
    'time',
    'stamp',
    'seconds',
    'us',
    'gyro',
    'raw gyro',
    'rate',
    'acc',
    'roll',
    'pitch',
    'yaw',
    'x',
    'y',
    'z',
  ],
  ...['motor', 'output', 'speed', 'rpm', 'throttle', 'wanted', 'voltage', 'current', 'battery', 'frame'],
  ...['0', '1', '2', '3', '4', '[deg/s]', '(rad/s)', '[s]', '[ms]', 'V', 'A', '%', '[0]', '__proto__', ''],
];

const heading = fc.array(fc.constantFrom(...words), { maxLength: 4 }).map((said) => said.join(' '));

/** What a column does from row to row. */
interface Column {
  readonly heading: string;
  readonly start: number;
  readonly step: number;
  readonly swing: number;
  readonly every: number;
  readonly digits: number;
}

const column: fc.Arbitrary<Column> = fc.record({
  heading,
  start: fc.oneof(fc.constantFrom(0, 1000, 16.4, 1.77e18), fc.double({ min: -1e6, max: 1e6, noNaN: true })),
  step: fc.constantFrom(0, 0, 0.001, 0.02, 1000, -0.01),
  swing: fc.constantFrom(0, 0, 0.4, 60, 900),
  every: fc.integer({ min: 2, max: 90 }),
  digits: fc.integer({ min: 0, max: 6 }),
});

/** A word that loggers write for nothing, at some rows. */
const hole = fc.record({
  row: fc.nat(220),
  column: fc.nat(9),
  text: fc.constantFrom('', 'nan', '-', 'inf', '1e999', '"', '[1 2]', 'ok', '-0', '0x10'),
});

/** Columns of which a logger says what they hold, behind a time that rises. */
const saidColumns: fc.Arbitrary<readonly Column[]> = fc
  .record({
    step: fc.constantFrom(0.001, 0.004, 0.02, 0.1),
    columns: fc.uniqueArray(
      fc.record({
        said: fc.constantFrom<readonly [string, number, number]>(
          ['gyro roll [deg/s]', 0, 200],
          ['gyro pitch [deg/s]', 3, 90],
          ['unfiltered gyro yaw [rad/s]', 0, 7],
          ['wanted roll [deg/s]', 0, 300],
          ['motor 1 [%]', 40, 40],
          ['motor 2 [%]', 50, 49],
          ['speed of motor 1 [rpm]', 14_000, 9000],
          ['throttle [%]', 30, 30],
          ['voltage [V]', 15, 1],
          ['current [A]', 20, 19],
          ['since control frame [ms]', 6, 5],
        ),
        every: fc.constantFrom(61, 7, 300, 2.5),
        digits: fc.integer({ min: 0, max: 4 }),
        share: fc.constantFrom(1, 1, 1, 0.1, 0),
      }),
      { minLength: 3, maxLength: 9, selector: ({ said }) => said[0] },
    ),
  })
  .map(({ step, columns }) => [
    { heading: 'time [s]', start: 3, step, swing: 0, every: 2, digits: 4 },
    ...columns.map(({ said: [heading, start, swing], every, digits, share }) => ({
      heading,
      start,
      step: 0,
      swing: swing * share,
      every,
      digits,
    })),
  ]);

/** A table of some columns that may be a recording. */
const table: fc.Arbitrary<string> = fc
  .record({
    columns: fc.oneof<fc.Arbitrary<readonly Column[]>[]>(
      saidColumns,
      saidColumns,
      fc.array(column, { minLength: 1, maxLength: 9 }),
    ),
    rows: fc.constantFrom(900, 600, 300, 1500, 40, 2, 1, 0),
    separator: fc.constantFrom(',', ';', '\t', ',', ' ', '|'),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    before: fc.constantFrom('', '# simulated\n', '\ufeff', 'made by hand\n\n'),
    hasHeadings: fc.oneof(
      { weight: 4, arbitrary: fc.constant(true) },
      { weight: 1, arbitrary: fc.constant(false) },
    ),
    trails: fc.boolean(),
    holes: fc.array(hole, { maxLength: 6 }),
    jump: fc.record({ row: fc.nat(220), by: fc.constantFrom(0, 0, -5, 30) }),
  })
  .map(({ columns, rows, separator, lineEnd, before, hasHeadings, trails, holes, jump }) => {
    const end = (trails ? separator : '') + lineEnd;
    const at = new Map(holes.map((one) => [`${one.row} ${one.column}`, one.text]));
    const lines = Array.from({ length: rows }, (_, row) =>
      columns.map(({ start, step, swing, every, digits }, index) => {
        const gone = row >= jump.row && step !== 0 ? jump.by : 0;
        const value = start + step * row + gone + swing * Math.sin((2 * Math.PI * row) / every);
        return at.get(`${row} ${index}`) ?? value.toFixed(digits);
      }),
    );
    const head = hasHeadings ? [columns.map((one) => one.heading)] : [];
    return before + [...head, ...lines].map((cells) => cells.join(separator) + end).join('');
  });

export const recordingText: fc.Arbitrary<string> = fc.oneof(
  { weight: 8, arbitrary: table },
  { weight: 6, arbitrary: slipped(table) },
  { weight: 1, arbitrary: anyText },
);
