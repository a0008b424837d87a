import { strict as assert } from 'node:assert';
import { unreadColumns } from '../../../../server/src/recording/layout';
import { learnt, takenFor } from '../../../support/table';

/** A number of a row, by the count of the row. */
type Cell = (row: number) => string;

const swing = (size: number, pace: number, digits = 4): Cell => {
  return (row) => (size * Math.sin(row / pace) + 0.1 * size * Math.sin(row * 2.3)).toFixed(digits);
};
const counted =
  (step: number, from = 0, digits = 0): Cell =>
  (row) =>
    (from + row * step).toFixed(digits);
const level = (middle: number, size: number, digits = 3): Cell => {
  return (row) => (middle + size * Math.sin(row / 37)).toFixed(digits);
};
const same =
  (text: string): Cell =>
  () =>
    text;
const axes = ['x', 'y', 'z'];
const turns = (size: number) => axes.map((_, axis) => swing(size, 30 + 7 * axis));

/** Each with what its rows hold; the headings are those that were met, or of their kind. */
const loggers: readonly {
  readonly title: string;
  readonly headings: string;
  readonly separator?: string;
  readonly cells: readonly Cell[];
  readonly taken: readonly string[];
}[] = [
  {
    title: 'degrees that nobody names, the time in seconds',
    headings: 'time,Acc_X,Gyr_X,Gyr_Y,Gyr_Z',
    cells: [counted(0.01, 0, 2), swing(9, 5), ...turns(90)],
    taken: [
      'time: time, in s',
      'Acc_X: not read',
      'Gyr_X: gyro.roll, in deg/s',
      'Gyr_Y: gyro.pitch, in deg/s',
      'Gyr_Z: gyro.yaw, in deg/s',
    ],
  },
  {
    title: 'blanks inside names, radians, and motors that may be told or turn',
    headings: 't,ang acc x,ang vel x,ang vel y,ang vel z,qx,mot 1,mot 2,dmot 1,vbat',
    cells: [
      counted(0.0025, 0, 4),
      swing(50, 3),
      ...turns(5),
      swing(0.5, 50),
      level(1400, 500),
      level(1500, 400),
      swing(900, 4),
      level(15.8, 0.4),
    ],
    taken: [
      't: time, in s',
      'ang acc x: not read',
      'ang vel x: gyro.roll, in rad/s',
      'ang vel y: gyro.pitch, in rad/s',
      'ang vel z: gyro.yaw, in rad/s',
      'qx: not read',
      'mot 1: speed.1, in rad/s ?',
      'mot 2: speed.2, in rad/s ?',
      'dmot 1: not read',
      'vbat: voltage, in V',
    ],
  },
  {
    title: 'two clocks, a text between, numbers in brackets from 0, sticks that are no rates',
    headings:
      'elapsed_time,timestamp,img_filename,gyro_x,gyro_y,gyro_z,thrust[0],thrust[1],channels_roll,vbat',
    cells: [
      counted(0.002, 0, 3),
      counted(2000, 1_690_000_000_000_000),
      (row) => `img_${row}.jpg`,
      ...turns(6),
      level(0.5, 0.2),
      level(0.4, 0.2),
      level(1500, 300, 0),
      level(15.8, 0.4),
    ],
    taken: [
      'elapsed_time: time, in s',
      'timestamp: not read',
      'img_filename: not read',
      'gyro_x: gyro.roll, in rad/s',
      'gyro_y: gyro.pitch, in rad/s',
      'gyro_z: gyro.yaw, in rad/s',
      'thrust[0]: motor.1, from 0 to 1 ?',
      'thrust[1]: motor.2, from 0 to 1 ?',
      'channels_roll: not read',
      'vbat: voltage, in V',
    ],
  },
  {
    title: 'nanoseconds since 1970 behind a mark, units in square brackets, one letter for a turn',
    headings: '#timestamp [ns],w_RS_S_x [rad s^-1],w_RS_S_y [rad s^-1],w_RS_S_z [rad s^-1],a_RS_S_x [m s^-2]',
    cells: [(row) => String(1_403_636_579_758_555_392n + BigInt(row) * 5_000_000n), ...turns(2), swing(9, 5)],
    taken: [
      'timestamp [ns]: time, in ns',
      'w_RS_S_x [rad s^-1]: gyro.roll, in rad/s',
      'w_RS_S_y [rad s^-1]: gyro.pitch, in rad/s',
      'w_RS_S_z [rad s^-1]: gyro.yaw, in rad/s',
      'a_RS_S_x [m s^-2]: not read',
    ],
  },
  {
    title: 'blanks as separators, headings behind a mark',
    headings: '# timestamp ang_vel_x ang_vel_y ang_vel_z lin_acc_x',
    separator: ' ',
    cells: [counted(0.002, 1_540_000_000, 6), ...turns(2), swing(9, 5)],
    taken: [
      'timestamp: time, in s',
      'ang_vel_x: gyro.roll, in rad/s',
      'ang_vel_y: gyro.pitch, in rad/s',
      'ang_vel_z: gyro.yaw, in rad/s',
      'lin_acc_x: not read',
    ],
  },
  {
    title: 'seconds and nanoseconds apart, empty columns, names that come again',
    headings: 'header,seq,secs,nsecs,frame_id,x,y,z,x,y,z',
    cells: [
      same(''),
      counted(1),
      (row) => String(1_527_000_000 + Math.floor(row / 100)),
      (row) => String((row % 100) * 10_000_000),
      same("'body'"),
      ...turns(2),
      ...turns(9),
    ],
    taken: [
      'header: not read',
      'seq: not read',
      'secs: time, in s',
      'nsecs: time-parts, in ns',
      'frame_id: not read',
      ...['x', 'y', 'z', 'x (2)', 'y (2)', 'z (2)'].map((name) => `${name}: not read`),
    ],
  },
  {
    title: 'a pack with its current, and turns by a word that says other things too',
    headings:
      'time,wind_speed,battery_voltage,battery_current,angular_x,angular_y,angular_z,linear_acceleration_x',
    cells: [counted(0.1, 0, 2), level(3, 1), level(23.1, 0.5), level(18, 6), ...turns(0.4), swing(3, 9)],
    taken: [
      'time: time, in s',
      'wind_speed: not read',
      'battery_voltage: voltage, in V',
      'battery_current: current, in A',
      'angular_x: gyro.roll, in rad/s ?',
      'angular_y: gyro.pitch, in rad/s ?',
      'angular_z: gyro.yaw, in rad/s ?',
      'linear_acceleration_x: not read',
    ],
  },
  {
    title: 'vectors in cells, names of a letter',
    headings: 't,w,T_sp,pwm',
    cells: [
      counted(0.02, 0, 2),
      (row) =>
        `"[${turns(3)
          .map((one) => one(row))
          .join(', ')}]"`,
      level(0.4, 0.05),
      (row) => `"[${[1, 2, 3, 4].map((motor) => level(1400, 100 + motor, 0)(row)).join(', ')}]"`,
    ],
    taken: [
      't: time, in s',
      'w[0]: gyro.roll, in rad/s ?',
      'w[1]: gyro.pitch, in rad/s ?',
      'w[2]: gyro.yaw, in rad/s ?',
      'T_sp: not read',
      ...[1, 2, 3, 4].map((motor) => `pwm[${motor - 1}]: motor.${motor}, from 1000 to 2000`),
    ],
  },
  {
    title: 'motors by their arms, a capital for each word',
    headings: 'timestamp_ms,throttle_ref,accX,gyroX,gyroY,gyroZ,mot_FL,mot_FR',
    cells: [
      counted(4),
      level(1400, 300, 0),
      swing(9, 5),
      ...turns(80),
      level(1400, 300, 0),
      level(1500, 300, 0),
    ],
    taken: [
      'timestamp_ms: time, in ms',
      'throttle_ref: throttle, from 1000 to 2000',
      'accX: not read',
      'gyroX: gyro.roll, in deg/s',
      'gyroY: gyro.pitch, in deg/s',
      'gyroZ: gyro.yaw, in deg/s',
      'mot_FL: speed.1, in rad/s ?',
      'mot_FR: speed.2, in rad/s ?',
    ],
  },
  {
    title: 'letters for rates, which say other things elsewhere',
    headings: 'time_s,p,q,r,rpm1,rpm2',
    cells: [counted(0.005, 0, 3), ...turns(3), level(21_000, 4000, 0), level(22_000, 4000, 0)],
    taken: [
      'time_s: time, in s',
      'p: gyro.roll, in rad/s ?',
      'q: gyro.pitch, in rad/s ?',
      'r: gyro.yaw, in rad/s ?',
      'rpm1: speed.1, in rpm',
      'rpm2: speed.2, in rpm',
    ],
  },
  {
    title: 'units in round brackets and glued to names',
    headings:
      'seconds_since_launch,angular_rate_body_radps[0],angular_rate_body_radps[1],angular_rate_body_radps[2],Battery Voltage (V),Motor_0,Motor_1',
    cells: [counted(0.01, 0, 2), ...turns(4), level(15, 0.4), level(45, 20), level(50, 20)],
    taken: [
      'seconds_since_launch: time, in s',
      'angular_rate_body_radps[0]: gyro.roll, in rad/s',
      'angular_rate_body_radps[1]: gyro.pitch, in rad/s',
      'angular_rate_body_radps[2]: gyro.yaw, in rad/s',
      'Battery Voltage (V): voltage, in V',
      'Motor_0: motor.1, from 0 to 100',
      'Motor_1: motor.2, from 0 to 100',
    ],
  },
  {
    title: 'another language, decimal commas',
    headings: 'Zeit (s);Kreisel X (°/s);Spannung (V);Strom (A);Drehzahl 1 (1/min)',
    separator: ';',
    cells: [counted(0.01, 0, 2), swing(90, 20), level(16, 0.4), level(20, 5), level(20_000, 3000, 0)].map(
      (cell): Cell =>
        (row) =>
          cell(row).replace('.', ','),
    ),
    taken: [
      'Zeit (s): time, in s',
      'Kreisel X (°/s): gyro.roll, in deg/s',
      'Spannung (V): voltage, in V',
      'Strom (A): current, in A',
      'Drehzahl 1 (1/min): speed.1, in rpm',
    ],
  },
  {
    title: 'the time of a clock, arms and thousandths in another language, thousandths of degrees',
    headings: 'Uhrzeit\tEreignis\tDrehrate X [mGrad/s]\tMotor VL [‰]\tMotor HR [‰]\tDrehzahl VL [1/min]',
    separator: '\t',
    cells: [
      (row) => `13:58:${(21.5 + row * 0.004).toFixed(3)}`,
      (row) => (row === 3 ? 'Start' : ''),
      swing(121_000, 20, 0),
      level(400, 200, 0),
      level(420, 210, 0),
      level(9000, 2000, 0),
    ],
    taken: [
      'Uhrzeit: time, in s',
      'Ereignis: not read',
      'Drehrate X [mGrad/s]: gyro.roll, in deg/s, times 0.001 ?',
      'Motor VL [‰]: motor.1, from 0 to 1000 ?',
      'Motor HR [‰]: motor.2, from 0 to 1000 ?',
      'Drehzahl VL [1/min]: speed.1, in rpm ?',
    ],
  },
];

function fileOf({
  headings,
  separator = ',',
  cells,
}: Pick<(typeof loggers)[number], 'headings' | 'separator' | 'cells'>) {
  const rows = Array.from({ length: 600 }, (_, row) => cells.map((cell) => cell(row)).join(separator));
  return `${headings}\n${rows.join('\n')}\n`;
}

describe('the columns of a logger', () => {
  for (const logger of loggers)
    it(`are known, or asked about: ${logger.title}`, async () => {
      assert.deepEqual(takenFor(await learnt(fileOf(logger))), logger.taken);
    });

  it('each have a reason, and questions with answers that can be taken', async () => {
    for (const logger of loggers)
      for (const { why, asks, means } of await learnt(fileOf(logger))) {
        assert.match(why, /^[A-Z].*\.$/);
        for (const { sentence, choices } of asks) {
          assert.match(sentence, /\?|\.$/);
          assert.ok(choices.length > 0, sentence);
          for (const choice of choices) assert.equal(choice.means.heading, means.heading);
        }
      }
  });

  const one = async (headings: string, cells: readonly Cell[], at = 1) => {
    const proposed = await learnt(fileOf({ headings: `time_ms,${headings}`, cells: [counted(2), ...cells] }));
    return { proposed, taken: takenFor(proposed)[at] ?? '', asked: proposed[at]?.asks[0]?.sentence ?? '' };
  };

  it('are asked about where a unit is named that the numbers can’t be in', async () => {
    const { taken, asked } = await one('gyro x (rad/s)', [swing(400, 20)]);
    assert.equal(taken, 'gyro x (rad/s): gyro.roll, in deg/s ?');
    assert.match(asked, /^Its heading says rad\/s, and 4\d\d rad\/s can hardly be/);
    assert.match((await one('voltage (V)', [level(15_800, 300, 0)])).asked, /^Its heading says V/);
  });

  it('are asked about where the numbers may be in several units, or a unit is unknown', async () => {
    assert.match((await one('gyro x', [swing(20, 20)])).asked, /several units allow: in which unit is it\?$/);
    assert.match((await one('gyro x (counts)', [swing(400, 20)])).asked, /^Nobody knows its unit “counts”/);
    assert.match((await one('voltage', [level(37, 3, 0)])).asked, /in which unit is it\?$/);
  });

  it('are told by a unit that stands behind a blank, without brackets', async () => {
    for (const unit of ['deg/s', 'rad/s']) {
      const { taken, asked } = await one(`gyro roll ${unit}`, [swing(20, 20)]);
      assert.equal(taken, `gyro roll ${unit}: gyro.roll, in ${unit}`);
      assert.equal(asked, '');
    }
    assert.equal((await one('stick asks roll deg/s', [swing(20, 20)])).asked, '');
  });

  it('are asked about where nobody can say what is full', async () => {
    const { taken, asked, proposed } = await one('motor 1,motor 2', [level(900, 500, 0), level(800, 500, 0)]);
    assert.match(taken, / \?$/);
    assert.match(asked, /what does the logger write at idle, and what at full\?$/);
    assert.ok((proposed[1]?.asks[0]?.choices.length ?? 0) > 1);
    const full = await one('motor 1', [(row) => String(Math.min(4095, 2000 + 5 * row))]);
    assert.equal(full.taken, 'motor 1: motor.1, from 0 to 4095', 'who reaches full stands there');
  });

  it('are asked about where two hold the same', async () => {
    const { proposed } = await one('gyro x,gyr x', [swing(90, 20), swing(95, 20)]);
    for (const { asks } of proposed.slice(1))
      assert.match(asks[0]?.sentence ?? '', /^It seems to hold gyro\.roll, as does/);
  });

  it('are asked about where the gyro goes against the sticks, or in another unit than they', async () => {
    const gyro = swing(90, 20);
    const against = await one('gyro roll,wanted roll', [(row) => String(-Number(gyro(row))), gyro], 2);
    assert.match(against.asked, /^The gyro turns against what is asked for here/);
    assert.match(unreadColumns(against.proposed).join(' '), /“wanted roll”: The gyro turns against/);
    const slow = swing(15, 20);
    const other = await one('gyro roll (rad/s),wanted roll (deg/s)', [slow, slow], 2);
    assert.match(
      other.proposed[2]?.asks.map(({ sentence }) => sentence).join(' ') ?? '',
      /degrees and the other in radians/,
    );
  });

  it('that count rows or milliseconds are asked about, and counters of rows need a rate', async () => {
    const [clock] = await learnt(fileOf({ headings: 'time,gyro x', cells: [counted(1), swing(90, 20)] }));
    assert.match(clock?.asks[0]?.sentence ?? '', /may count milliseconds or rows/);
  });

  it('that count ticks, or whole numbers that may be counts of the gyro, are asked about', async () => {
    const cells = [counted(2, 700_000), swing(1900, 20, 0)];
    const [clock, gyro] = await learnt(fileOf({ headings: 'tick_1024,gyr_x', cells }));
    assert.match(clock?.asks[0]?.sentence ?? '', /^It counts ticks/);
    assert.ok(clock?.asks[0]?.choices.some(({ means }) => means.unit === 's' && means.scale === 1 / 1024));
    assert.match(gyro?.asks[0]?.sentence ?? '', /several units allow: in which unit is it\?$/);
    assert.deepEqual(
      gyro?.asks[0]?.choices.map(({ means }) => means.scale ?? 1),
      [1, 2000 / 32_768],
    );
    const large = await one('gyro x', [swing(9000, 20, 0)]);
    assert.match(large.asked, /in which unit is it\?$/);
  });

  it('without headings are told by what their numbers do, and all but the clock is asked', async () => {
    const motors = [1400, 1450, 1500, 1550].map((middle) => level(middle, 300, 0));
    const text = fileOf({ headings: '', cells: [counted(1000), ...turns(80), ...motors] }).trimStart();
    assert.deepEqual(takenFor(await learnt(text)), [
      'column 1: time, in us',
      'column 2: gyro.roll, in deg/s ?',
      'column 3: gyro.pitch, in deg/s ?',
      'column 4: gyro.yaw, in deg/s ?',
      ...[1, 2, 3, 4].map((motor) => `column ${motor + 4}: motor.${motor}, from 1000 to 2000 ?`),
    ]);
  });

  it('named like what every object has are nobody’s', async () => {
    const { proposed } = await one('constructor,__proto__,toString', [swing(9, 3), swing(9, 4), swing(9, 5)]);
    assert.deepEqual(
      proposed.slice(1).map(({ leftOut }) => leftOut),
      ['unknown', 'unknown', 'unknown'],
    );
  });
});
