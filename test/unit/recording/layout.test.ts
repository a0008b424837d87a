import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { layoutIn } from '../../../server/src/additions/read-layout';
import { type RecordingLayout, recordingLayout } from '../../../server/src/catalog/model/recording-layout';
import { layoutFor, layoutText, wantedColumns } from '../../../server/src/recording/layout';
import { learnTable, readLearnt, withSaid } from '../../../server/src/recording/open-recording';
import { readHead } from '../../../server/src/recording/read/each-row';
import { unhurried } from '../../../server/src/recording/read/source';
import { columnText, saidColumn } from '../../../server/src/recording/said-column';
import { textSource } from '../../support/table';
import { shippedData } from '../catalog/shipped';

const text = `t,a,b,c\n${Array.from({ length: 50 }, (_, row) => `${row},${row % 7},${1000 + row},${row % 3}`).join('\n')}\n`;
const layout = (columns: RecordingLayout['columns'], rate?: string): RecordingLayout => ({
  version: 1,
  columns,
  ...(rate === undefined ? {} : { rate }),
});
const clock = { heading: 't', channel: 'time', unit: 'ms' };

async function read(said: RecordingLayout) {
  const head = await readHead(textSource(text));
  return readLearnt(
    textSource(text),
    { head, confirmed: { name: 'x', layout: said }, proposed: [], layout: said },
    unhurried,
  );
}

describe('what the columns of a logger hold', () => {
  it('gives numbers in the units that are reckoned with', async () => {
    const { channels } = await read(
      layout([
        clock,
        { heading: 'a', channel: 'gyro.roll', unit: 'deg/s', reversed: true },
        { heading: 'b', channel: 'motor.2', zero: 1000, full: 2000 },
        { heading: 'c', channel: 'speed.1', unit: 'rpm', scale: 2, zero: 1 },
      ]),
    );
    assert.deepEqual([...channels.keys()], ['gyro.roll', 'motor.2', 'speed.1']);
    assert.ok(Math.abs((channels.get('gyro.roll')?.[3] ?? 0) + (3 * Math.PI) / 180) < 1e-7);
    assert.ok(Math.abs((channels.get('motor.2')?.[3] ?? 0) - 0.003) < 1e-7);
    assert.ok(Math.abs((channels.get('speed.1')?.[2] ?? 0) - (2 * 2 * Math.PI) / 60) < 1e-7);
  });

  it('may be paced by rows a second where no time is written', async () => {
    const { time } = await read(layout([{ heading: 'a', channel: 'throttle', zero: 0, full: 7 }], '200 Hz'));
    assert.ok(Math.abs((time.at(-1) ?? 0) - 49 / 200) < 1e-12);
  });

  it('says what is left out and what is not there', async () => {
    const { leftOut } = await read(
      layout([
        clock,
        { heading: 'a', channel: 'throttle', zero: 0, full: 7 },
        { heading: 'b' },
        { heading: 'gone', channel: 'voltage', unit: 'V' },
      ]),
    );
    assert.deepEqual(leftOut, [
      'Not read, as was confirmed: “b”.',
      'Not in this file, though its layout names them: “gone”.',
    ]);
  });

  for (const [title, columns, says] of [
    [
      'two columns for one channel',
      [
        clock,
        { heading: 'a', channel: 'voltage', unit: 'V' },
        { heading: 'b', channel: 'voltage', unit: 'V' },
      ],
      /^Two columns are said to hold voltage/,
    ],
    [
      'idle and full alike',
      [clock, { heading: 'a', channel: 'motor.1', zero: 5, full: 5 }],
      /writes 5 for idle and for full/,
    ],
    [
      'a unit that is none',
      [clock, { heading: 'a', channel: 'voltage', unit: 'volty' }],
      /“volty”, which is no unit/,
    ],
    ['no time', [{ heading: 'a', channel: 'voltage', unit: 'V' }], /^No column is known to hold the time/],
    ['nothing to read', [clock], /^No column of this file is known/],
    [
      'a time that stands',
      [
        { heading: 'c', channel: 'time', unit: 's' },
        { heading: 'a', channel: 'voltage', unit: 'V' },
      ],
      null,
    ],
  ] as const)
    it(`is refused with ${title}`, async () => {
      const reading = read(layout([...columns]));
      if (says === null) await reading;
      else await assert.rejects(reading, (error: Error) => says.test(error.message));
    });

  it('is known again by its headings in any order, and never without any', async () => {
    const head = await readHead(textSource(text));
    const known = (...headings: readonly string[]) => ({
      name: headings.join(),
      layout: layout(headings.map((heading) => ({ heading }))),
    });
    assert.equal(layoutFor(head, [known('t', 'a'), known('c', 'b', 'a', 't')])?.name, 'c,b,a,t');
    assert.equal(layoutFor(head, [known('t', 'a', 'b'), known('t', 'a', 'b', 'c', 'd')]), null);
    const bare = await readHead(textSource('1,2\n3,4\n5,6\n'));
    assert.equal(layoutFor(bare, [known('column 1', 'column 2')]), null);
  });

  it('is read again as it was written', () => {
    const columns = fc.array(
      fc.record(
        {
          heading: fc.string({ maxLength: 20 }),
          channel: fc.constantFrom('time', 'gyro.roll', 'motor.3', 'voltage'),
          unit: fc.constantFrom('s', 'deg/s'),
          scale: fc.double({ min: 0.001, max: 1000, noNaN: true }),
          zero: fc.integer(),
          reversed: fc.boolean(),
        },
        { requiredKeys: ['heading'] },
      ),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(columns, (rows) => {
        const written = recordingLayout.parse(layout(rows));
        assert.deepEqual(layoutIn(layoutText(written)), { layout: written, fault: null });
      }),
    );
  });

  it('tells the place of what is wrong in its file', () => {
    assert.match(
      layoutIn('{\n  "version": 1,\n  "columns": [{ "heading": "a", "channel": "warp" }]\n}').fault ?? '',
      /^line 3: /,
    );
    assert.match(layoutIn('{').fault ?? '', /^line 1: /);
  });
});

describe('what is said of a column in a line', () => {
  for (const [said, means, told] of [
    [
      'Gyr X = gyro.roll in deg/s',
      { heading: 'Gyr X', channel: 'gyro.roll', unit: 'deg/s' },
      'gyro.roll, in deg/s, more is to the right',
    ],
    [
      'a=b = -gyro.yaw in rad/s',
      { heading: 'a=b', channel: 'gyro.yaw', unit: 'rad/s', reversed: true },
      'gyro.yaw, in rad/s, the other way round, more is clockwise',
    ],
    [
      'm = motor.1 from 1000 to 2000',
      { heading: 'm', channel: 'motor.1', zero: 1000, full: 2000 },
      'motor.1, from 1000 to 2000',
    ],
    [
      'e = speed.2 in rpm times 0.5',
      { heading: 'e', channel: 'speed.2', unit: 'rpm', scale: 0.5 },
      'speed.2, in rpm, times 0.5',
    ],
    ['x = nothing', { heading: 'x' }, 'not read'],
  ] as const)
    it(`is understood: ${said}`, () => {
      assert.deepEqual(saidColumn(said), means);
      assert.equal(columnText(means), told);
    });

  for (const said of [
    'gyro.roll',
    ' = time',
    'a = ',
    'a = time in parsecs',
    'a = -nothing',
    'a = motor.1 from 3',
    'a = b c d',
  ])
    it(`is not: ${said}`, () => assert.equal(saidColumn(said), null));

  it('takes the place of what was learnt, and answers its questions', async () => {
    const source = textSource(text);
    const table = await learnTable(source, [], shippedData().bundle.recordings, unhurried);
    const said = withSaid(table, [{ heading: 'a', channel: 'gyro.roll', unit: 'deg/s' }, clock], undefined);
    assert.deepEqual(said.proposed.find(({ column }) => column.heading === 'a')?.asks, []);
    const { channels } = wantedColumns(said.head, said.layout);
    assert.deepEqual(
      channels.map(({ channel }) => channel),
      ['gyro.roll'],
    );
  });
});
