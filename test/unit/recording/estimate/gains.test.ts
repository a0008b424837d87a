import assert from 'node:assert/strict';
import { CraftView } from '../../../../server/src/craft/view';
import { axisNames } from '../../../../server/src/figures/axis-names';
import { flightRows } from '../../../../server/src/recording/estimate/flight-rows';
import { measuredGains } from '../../../../server/src/recording/estimate/gains/gains';
import type { MeasuredAnswer, MeasuredGain } from '../../../../server/src/recording/report';
import { craftOf } from '../../../support/findings';
import { madeRecording, noise } from '../../../support/made-recording';

const degree = Math.PI / 180;

/** %/(deg/s), %/deg, %/(deg/s^2): what the board of these flights has. */
const truth = { proportional: 0.09, integral: 0.3, derivative: 0.0008 };

const script = [
  'craft.layout = quad-x',
  'motor.order = [rear-left, front-left, front-right, rear-right]',
  'motor.spin = outward',
  'pack.one.chemistry = lipo',
  'pack.one.cells = 4',
  'pack.one.capacity = 1500 mAh',
  'gyro.rate = 2 kHz',
  'control.rate = 2 kHz',
  'gyro.filter.1.kind = butterworth',
  'gyro.filter.1.cutoff = 120 Hz',
  'derivative.filter.1.kind = first-order',
  'derivative.filter.1.cutoff = 80 Hz',
];

interface Flown {
  readonly rate?: number;
  /** rad/s of wanted steps, or of those of each turn. */
  readonly moved?: number | ((turn: number) => number);
  /** Of the gusts beside the usual. */
  readonly gusts?: number;
  /** What a motor is told for a share that was asked of it, at a moment. */
  readonly told?: (asked: number, time: number) => number;
  /** What becomes of the gains at a moment. */
  readonly share?: (throttle: number) => number;
  readonly throttle?: (time: number) => number;
  readonly bent?: number;
  /** The most that the derivative asks for, a share. */
  readonly bound?: number;
  readonly feedforward?: number;
}

function bounded(value: number, limit = Number.POSITIVE_INFINITY): number {
  return Math.max(-limit, Math.min(limit, value));
}

/** A flight whose board runs with each row of a time ten times as fine as the rows that are kept. */
function flown(made: Flown): ReturnType<typeof madeRecording> {
  const rate = made.rate ?? 400;
  const fine = 2000;
  const seconds = 18;
  const every = fine / rate;
  const throttle = made.throttle ?? (() => 0.4);
  const told = made.told ?? ((asked) => asked);
  const columns = new Map<string, Float64Array>();
  const column = (name: string) => {
    const values = columns.get(name) ?? new Float64Array(seconds * rate);
    columns.set(name, values);
    return values;
  };
  const states = axisNames.map((_, at) => {
    const deviate = noise(7 + at);
    return { deviate, gust: 0, gyro: 0, before: 0, held: 0, slow: 0, wanted: 0 };
  });
  const [p, i, d, f] = [truth.proportional, truth.integral, truth.derivative, made.feedforward ?? 0].map(
    (gain) => gain / 100 / degree,
  ) as [number, number, number, number];
  // The derivative’s filter, one pole by the bilinear transform.
  const warped = Math.tan((Math.PI * 80) / fine);
  for (let step = 0; step < seconds * fine; step += 1) {
    const time = step / fine;
    const commands = states.map((state, at) => {
      const phase = time * (0.9 + 0.15 * at) + at / 3;
      const { moved = 2 } = made;
      const size = typeof moved === 'number' ? moved : moved(Math.floor(phase / 2));
      const reach = size * (at === 2 ? 0.5 : 1);
      const before = state.wanted;
      // A quick move to either side, four times as long in all as each.
      const place = (phase * 2) % 4;
      state.wanted += 0.02 * (reach * (place < 1 ? 1 : place < 2 ? -1 : 0) - state.wanted);
      const error = state.wanted - state.gyro;
      const share = made.share?.(throttle(time)) ?? 1;
      state.held += (i * error) / fine;
      const slope = (state.gyro - state.before) * fine;
      state.slow += (2 * warped * (slope - state.slow)) / (1 + warped);
      state.before = state.gyro;
      const bent = (made.bent ?? 0) * p * error * Math.abs(error);
      const asked =
        share * (p * error - bounded(d * state.slow, made.bound)) +
        bent +
        state.held +
        f * (state.wanted - before) * fine;
      if (step % every === 0) {
        column(`gyro.${axisNames[at]}`)[step / every] = state.gyro;
        column(`wanted.${axisNames[at]}`)[step / every] = state.wanted;
      }
      state.gust += -state.gust / 0.3 / fine + (0.3 * state.deviate()) / Math.sqrt(fine);
      state.gyro +=
        ((180 / (at === 2 ? 4 : 1)) * asked + 20 * (made.gusts ?? 1) * state.gust - 2 * state.gyro) / fine;
      return asked;
    });
    if (step % every !== 0) continue;
    const row = step / every;
    const [roll = 0, pitch = 0, yaw = 0] = commands;
    // Rear left, front left, front right, rear right; the front pair sweeps outwards.
    const mix = [roll - pitch - yaw, roll + pitch + yaw, -roll + pitch - yaw, -roll - pitch + yaw];
    for (const [motor, one] of mix.entries())
      column(`motor.${motor + 1}`)[row] = told(throttle(time) + one, time);
    column('throttle')[row] = throttle(time);
    column('voltage')[row] = voltageAt(time);
  }
  return madeRecording(
    { seconds, rate },
    Object.fromEntries(
      [...columns].map(([name, values]) => [name, (_: number, row: number) => values[row] ?? 0]),
    ),
  );
}

const voltageAt = (time: number) => 16.4 - 0.1 * time;

function gainsOf(recording: ReturnType<typeof madeRecording>, ...lines: readonly string[]) {
  const rows = flightRows(recording, 1);
  assert.ok(rows !== null);
  const view = new CraftView(craftOf([...script, ...lines].join('\n')), 'one');
  const work = measuredGains(rows, view);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

function toldOf(gains: MeasuredAnswer<readonly MeasuredGain[]>): readonly MeasuredGain[] {
  assert.ok(gains.told !== null, JSON.stringify(gains));
  return gains.told;
}

function assertTrue(
  gains: MeasuredAnswer<readonly MeasuredGain[]>,
  terms: readonly MeasuredGain['term'][],
): void {
  for (const { axis, term, gain } of toldOf(gains)) {
    if (!terms.includes(term)) continue;
    assert.ok(gain.told !== null, `${axis} ${term}: ${JSON.stringify(gain)}`);
    const { likely, low, high } = gain.told;
    const told = `${axis} ${term}: ${truth[term]} is told as ${likely} [${low}, ${high}]`;
    assert.ok(low <= truth[term] && truth[term] <= high, told);
    assert.ok(Math.abs(likely / truth[term] - 1) < 0.06, told);
  }
}

/** All reasons, with what to do. */
function reasons(gains: MeasuredAnswer<readonly MeasuredGain[]>): string {
  const all = gains.told === null ? [gains] : gains.told.map(({ gain }) => gain);
  return [...new Set(all.flatMap((one) => (one.told === null ? [`${one.reason} ${one.advice}`] : [])))].join(
    '\n',
  );
}

describe('the board’s own gains in a recording', () => {
  let usual: ReturnType<typeof flown>;

  before(() => {
    usual = flown({});
  });

  it('are told of all axes, with the sum and the derivative, by the script’s layout, order and spin', () => {
    const gains = gainsOf(usual);
    assertTrue(gains, ['proportional', 'integral', 'derivative']);
    assert.deepEqual(
      [...new Set(toldOf(gains).flatMap(({ gain }) => gain.told?.unit ?? []))],
      ['%/(deg/s)', '%/deg', '%/(deg/s^2)'],
    );
  });

  it('leave the derivative out where rows come too seldom for its filters, and say how often is enough', () => {
    const gains = gainsOf(flown({ rate: 250 }));
    assertTrue(gains, ['proportional', 'integral']);
    assert.equal(
      reasons(gains),
      'Rows come 250 times a second, too seldom for a derivative that is cut off at 80 Hz. Log 320 rows a second or more.',
    );
  });

  it('are what they are behind a thrust shape, outputs raised for an empty pack and gains that fade', () => {
    const root = (asked: number) => Math.sqrt(Math.max(0, asked));
    const points = Array.from({ length: 41 }, (_, at) => `${2.5 * at} % -> ${100 * root(at / 40)} %`).join(
      ', ',
    );
    const told = (asked: number, time: number) => root(asked) * (1 + 0.5 * (16.8 / voltageAt(time) - 1));
    assertTrue(gainsOf(flown({ told }), `motor.thrust-shape = ${points}`, 'power.even-thrust = 50 %'), [
      'proportional',
      'integral',
    ]);
    const throttle = (time: number) => 0.4 + 0.2 * Math.sin(time);
    const share = (given: number) => 1 - 0.5 * Math.max(0, (given - 0.3) / 0.7);
    const high = (word: string) => `control.when.high-throttle.${word}`;
    const fading = [
      `${high('from')} = 30 %`,
      `${high('proportional')} = 50 %`,
      `${high('derivative')} = 50 %`,
    ];
    assertTrue(gainsOf(flown({ throttle, share }), ...fading), ['proportional', 'integral', 'derivative']);
  });

  it('are told beside a feedforward, be it the script’s or one that nobody said', () => {
    const recording = flown({ feedforward: 0.002 });
    assertTrue(gainsOf(recording), ['proportional']);
    assertTrue(
      gainsOf(recording, ...axisNames.map((axis) => `control.${axis}.feedforward = 0.002 %/(deg/s^2)`)),
      ['proportional', 'integral'],
    );
  });

  it('are told from rows in which the derivative is not held by its limit', () => {
    // Each second turn is quick enough to be held.
    const recording = flown({ moved: (turn) => (turn % 2 === 0 ? 1 : 4), gusts: 2, bound: 0.006 });
    const blind = toldOf(gainsOf(recording)).find(
      ({ axis, term }) => axis === 'roll' && term === 'derivative',
    );
    assert.ok((blind?.gain.told?.high ?? 1) < truth.derivative, 'it does matter');
    const gains = gainsOf(recording, 'derivative.limit = 0.6 %');
    assertTrue(gains, ['proportional', 'integral', 'derivative']);
    assert.match(
      'basis' in gains ? gains.basis : '',
      /no motor was at a limit and no derivative held by its own/,
    );
    const shaken = flown({ moved: (turn) => (turn % 2 === 0 ? 1 : 4), gusts: 4, bound: 0.006 });
    assert.match(
      reasons(gainsOf(shaken, 'derivative.limit = 0.6 %')),
      /s in which the derivative was not held by its limit .* smaller steps/,
    );
  });

  it('are withheld where the command doesn’t grow in proportion to what is missing', () => {
    const gains = gainsOf(flown({ bent: 3 }));
    assert.match(reasons(gains), /told about roll doesn’t grow in proportion to what is missing/);
  });

  it('are withheld with what to fly, where the flight was too calm or a motor had no room', () => {
    const calm = gainsOf(flown({ moved: 0, gusts: 0.02 }));
    assert.ok(toldOf(calm).every(({ gain }) => gain.told === null));
    assert.match(
      reasons(calm),
      /small quick steps about roll in a calm hover, high enough and with an observer beside/,
    );
    const low = gainsOf(flown({ throttle: () => 0.01, told: (asked) => Math.max(0, asked) }));
    assert.match(reasons(low), /in which no motor was at idle or full: in \d+ % of the time one was/);
  });

  it('are withheld by what the script or the file lacks, each with how to get it', () => {
    const without = (...names: readonly string[]) => {
      const channels = [...usual.channels].filter(([name]) => !names.some((one) => name.startsWith(one)));
      return { ...usual, channels: new Map(channels) };
    };
    assert.match(reasons(gainsOf(without('wanted'))), /log what the sticks ask for about each axis/);
    assert.match(reasons(gainsOf(without('motor.4'))), /3 motors were logged; the script’s layout has 4/);
    assert.match(
      reasons(gainsOf(without('voltage'), 'power.even-thrust = 80 %')),
      /no column says the voltage/,
    );
    const wrong = 'motor.order = [front-left, front-right, rear-left, rear-right]';
    assert.match(reasons(gainsOf(usual, wrong)), /works against the error’s sign|follows from error/);
  });
});
