import { strict as assert } from 'node:assert';
import { readLearnt } from '../../../../server/src/recording/open-recording';
import { readHead } from '../../../../server/src/recording/read/each-row';
import { unhurried } from '../../../../server/src/recording/read/source';
import { learnt, takenFor, textSource } from '../../../support/table';

const headings = 'time us,gyro x,motor 1,vbat';
const rows = (from: number, count: number) =>
  Array.from(
    { length: count },
    (_, row) =>
      `${(from + row) * 1000},${((row * 37) % 400) - 200}.5,${1300 + ((row * 7) % 400)},16.${row % 10}`,
  );
const columns = [
  { heading: 'time us', channel: 'time', unit: 'us' },
  { heading: 'gyro x', channel: 'gyro.roll', unit: 'deg/s' },
  { heading: 'motor 1', channel: 'motor.1', zero: 1000, full: 2000 },
  { heading: 'vbat', channel: 'voltage', unit: 'V' },
];

async function read(lines: readonly string[]) {
  const source = textSource(`${[headings, ...lines].join('\n')}\n`);
  const layout = { version: 1 as const, columns };
  const head = await readHead(source);
  return readLearnt(source, { head, confirmed: { name: 'x', layout }, proposed: [], layout }, unhurried);
}

describe('rows of zeros, as loggers write before they have measured anything', () => {
  const twice = ['0,0,0,0', ...rows(1, 2000), '9000000,0,0,0', '9001000,0,0,0', ...rows(9002, 2000)];

  it('are left out where each flight begins, and said', async () => {
    const { time, channels, flights, leftOut } = await read(twice);
    assert.deepEqual([time.length, flights.length], [4000, 2]);
    assert.ok([...(channels.get('motor.1') ?? [])].every((value) => value > 0));
    assert.match(leftOut.join(' '), /^3 rows hold nothing but zeros/);
  });

  it('are not looked at when columns are learnt', async () => {
    const proposed = await learnt(`${[headings, ...twice].join('\n')}\n`);
    assert.deepEqual(takenFor(proposed), [
      'time us: time, in us',
      'gyro x: gyro.roll, in deg/s',
      'motor 1: motor.1, from 1000 to 2000',
      'vbat: voltage, in V',
    ]);
  });

  it('are all that there is where nothing is logged, and that is said', async () => {
    const zeros = Array.from({ length: 500 }, (_, row) => `${row * 1000},0,0,0`);
    await assert.rejects(read(zeros), /^Error: Every row holds nothing but zeros; look whether/);
  });
});
