import assert from 'node:assert/strict';
import { readFrom } from '../../support/recorded';
import { holdsTogether } from '../../support/sound-recording';

const encoded = (of: string) => new TextEncoder().encode(of);

function memory(): number {
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** A file that is made while it is read: a thousand rows again and again, with stamps that go on. */
function longSource(columns: number, rows: number) {
  const names = [
    'seconds',
    ...['roll', 'pitch', 'yaw'].map((axis) => `gyro ${axis} [deg/s]`),
    ...['throttle [%]', 'voltage [V]', 'current [A]'],
  ];
  const more = Array.from(
    { length: columns - names.length },
    (_, at) => `${at % 2 ? 'motor' : 'speed of motor'} ${1 + (at >> 1)} [${at % 2 ? '%' : 'rpm'}]`,
  );
  const block = 1000;
  const starts: number[] = [];
  let content = '';
  for (let row = 0; row < block; row += 1) {
    starts.push(content.length);
    const cells = Array.from({ length: columns - 1 }, (_, at) =>
      at < 3
        ? ((row * 37) % 111) - 55
        : at === 4
          ? `16.${row % 10}`
          : ((row * (at + 3)) % 90) * (at > 5 && at % 2 === 0 ? 100 : 1),
    );
    content += `0000.0000,${cells.join(',')}\n`;
  }
  const bytes = encoded(content);
  return {
    name: 'long.csv',
    size: null,
    async *bytes() {
      yield encoded(`${[...names, ...more].join(',')}\n`);
      for (let done = 0; done < rows; done += block) {
        for (const [at, start] of starts.entries()) {
          let count = done + at;
          for (const digit of [8, 7, 6, 5, 3, 2, 1, 0]) {
            bytes[start + digit] = 0x30 + (count % 10);
            count = Math.floor(count / 10);
          }
        }
        yield bytes.slice();
      }
    },
  };
}

describe('a recording', () => {
  it('of twenty million cells is read in bounded memory', async () => {
    const [columns, rows] = [17, 1_180_000];
    const before = memory();
    let most = 0;
    const recording = await readFrom(longSource(columns, rows), [], {
      turn: () => {
        most = Math.max(most, memory() - before);
        return undefined;
      },
    });
    assert.equal(recording.time.length, rows);
    assert.equal(recording.channels.size, 16);
    assert.ok(most < 300e6, `${Math.round(most / 1e6)} MB`);
    holdsTogether(recording);
  });
});
