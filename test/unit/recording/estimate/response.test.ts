import assert from 'node:assert/strict';
import { CraftView } from '../../../../server/src/craft/view';
import { flightRows } from '../../../../server/src/recording/estimate/flight-rows';
import { responsesOf } from '../../../../server/src/recording/estimate/response/response';
import type { Recording } from '../../../../server/src/recording/recording';
import type {
  AxisResponse,
  MeasuredAnswer,
  MeasuredSpan,
  RecordingReport,
} from '../../../../server/src/recording/report';
import { axisIndex, linearLoop, waitsOf } from '../../../simulator/linear';
import { truthOf } from '../../../simulator/loop-truth';
import { craftOf } from '../../../support/findings';
import { madeRecording, noise } from '../../../support/made-recording';
import { near } from '../../../support/near';
import { confirmedLayout, recordingOf } from '../../../support/recorded';
import { randomFlight } from '../../../support/simulated-flights';

const turn = 2 * Math.PI;

interface Flown {
  readonly seconds?: number;
  readonly rate?: number;
  /** Of the sticks, rad/s. */
  readonly asked?: number;
  /** Of what the gyro says besides, rad/s. */
  readonly noisy?: number;
  /** Share of the time that a motor stands at its limit. */
  readonly limited?: number;
}

/** The loop 2π 20/s with a wait of 5 ms, closed, about roll: 54 deg and 2.5 times the gain (arithmetic). */
function flown({ seconds = 40, rate = 1000, asked = 3, noisy = 0.02, limited = 0 }: Flown) {
  const random = noise(21);
  const past: number[] = new Array(Math.max(1, Math.round(0.005 * rate))).fill(0);
  const state = { wanted: 0, turned: 0, seen: 0 };
  return madeRecording(
    { seconds, rate },
    {
      'wanted.roll': (_time, row) => {
        if (row % Math.round(0.06 * rate) === 0) state.wanted = asked * Math.sign(random());
        return state.wanted;
      },
      'gyro.roll': () => {
        state.seen = state.turned + noisy * random();
        past.push(state.wanted - state.seen);
        // Half a row of the mean, and half of one until the next: the wait is whole rows.
        state.turned += ((turn * 10) / rate) * ((past.shift() ?? 0) + (past[0] ?? 0));
        return state.seen;
      },
      'motor.1': (time) => ((time / 0.4) % 1 < limited ? 1 : 0.5),
    },
  );
}

function viewOf(lines: string): CraftView {
  return new CraftView(craftOf(`${lines}\n`), null);
}

const onlyError = '[derivative]\ninput = error\n[control.roll]\nfeedforward = 0 %/(deg/s^2)';

type Responses = RecordingReport['responses'];

function answered(recording: Recording, view: CraftView | null = null): Responses {
  const rows = flightRows(recording, 1);
  assert.ok(rows !== null);
  const work = responsesOf(rows, view);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

function roll(responses: Responses): AxisResponse {
  const [one] = responses.told ?? [];
  assert.ok(one?.axis === 'roll', responses.told === null ? responses.reason : '');
  return one;
}

function why(answer: MeasuredAnswer<unknown>): string {
  if (!('reason' in answer)) return assert.fail('told');
  return `${answer.reason} ${answer.advice}`;
}

function holds({ low, high }: MeasuredSpan, truth: number): void {
  assert.ok(low <= truth && truth <= high, `${truth} in ${low} to ${high}`);
}

describe('how an axis follows its sticks', () => {
  it('is that of a loop of 20 Hz with 5 ms of wait: 48.2 Hz, 112 %, and by the answer alone 54 deg, 2.5 and 1.83', () => {
    const { curve, bandwidth, peak, step, margins, delay } = roll(answered(flown({}), viewOf(onlyError)));
    assert.ok(curve.told !== null && bandwidth.told !== null && peak.told !== null);
    near(bandwidth.told.likely, 48.23, 0.05);
    holds(bandwidth.told, 48.23);
    near(peak.told.likely, 112.2, 0.04);
    const at10 = curve.told.frequencies.findIndex((one) => one >= 9.9);
    near(curve.told.phase[at10] ?? 0, (-29.36 * (curve.told.frequencies[at10] ?? 0)) / 10, 0.06);
    assert.ok(margins.told !== null, margins.told === null ? margins.reason : '');
    assert.equal(margins.told.by, 'answer');
    near(margins.told.crossover.likely, 20, 0.06);
    holds(margins.told.phaseMargin, 54);
    near(margins.told.phaseMargin.likely, 54, 0.08);
    near(margins.told.gainMargin?.likely ?? 0, 2.5, 0.1);
    near(margins.told.sensitivityPeak.likely, 1.832, 0.06);
    assert.ok(step.told !== null, step.told === null ? step.reason : '');
    holds(step.told.endGain, 100);
    // 5 ms of nothing, then as steep as the loop: half after 5 + 1000/(2 · 2π 20) ms.
    near(step.told.half.likely, 8.98, 0.12);
    assert.match(why(delay), /outputs of all motors/);
  }).timeout(20_000);

  it('is withheld where the sticks hardly move, with what to fly instead and its cautions', () => {
    const { curve, margins, delay, step } = roll(answered(flown({ asked: 0.4 })));
    for (const answer of [curve, margins, delay, step]) {
      assert.match(why(answer), /^The sticks asked for too little about roll: 2\d deg\/s .* 57 deg\/s/);
      assert.match(
        why(answer),
        /propellers and battery checked.* an observer beside you.* small quick stick steps.* calm hover/,
      );
    }
  });

  it('is withheld where motors stand at a limit, and leaves out the parts where they do', () => {
    assert.match(why(roll(answered(flown({ limited: 0.3 }))).curve), /at a limit most of the time/);
  });

  it('is withheld where what comes is not what was asked for', () => {
    const { curve } = roll(answered(flown({ noisy: 400 })));
    assert.match(why(curve), /coherence stays below 0\.6.* confirm the columns/);
  });

  it('needs both columns, enough rows a second and some seconds', () => {
    const bare = answered(madeRecording({ seconds: 20, rate: 500 }, { 'gyro.roll': () => 0.1 }));
    assert.match(why(bare), /what rates the sticks asked for/);
    const deaf = answered(madeRecording({ seconds: 20, rate: 500 }, { 'wanted.roll': () => 0.1 }));
    assert.match(why(deaf), /gyro behind the board’s filters/);
    assert.match(why(answered(flown({ rate: 50 }))), /Rows come 50(\.0)? times a second/);
    assert.match(why(answered(flown({ seconds: 3 }))), /Only 3\.0 s/);
  });

  it('tells no margins where the script says too little, and what to write', () => {
    const recording = flown({});
    assert.match(why(roll(answered(recording)).margins), /No craft script/);
    const without = roll(answered(recording, viewOf('[control.roll]\nfeedforward = 0 %/(deg/s^2)'))).margins;
    assert.match(why(without), /how strongly roll is held.* Write control\.roll\.proportional/);
  }).timeout(20_000);
});

describe('a simulated flight with quick sticks', () => {
  const flight = randomFlight(75);
  let recording: Recording;
  let responses: Responses;

  before(async function () {
    this.timeout(60_000);
    recording = await recordingOf(flight.bytes, [confirmedLayout(flight.layout)]);
    responses = answered(recording, flight.view);
  });

  for (const axis of ['roll', 'pitch'] as const)
    it(`is told of as it was flown, about ${axis}: how it follows, how late it is, and its margins`, () => {
      const { craft, truth, rate } = flight;
      const told = responses.told?.find((one) => one.axis === axis);
      assert.ok(told !== undefined && told.margins.told !== null && told.step.told !== null);
      const loop = truthOf(linearLoop(craft, axisIndex[axis], truth.flown), 200);
      const { bandwidth, peak, delay, lag, margins } = told;
      assert.ok(bandwidth.told !== null && peak.told !== null && delay.told !== null && lag.told !== null);
      near(bandwidth.told.likely, loop.bandwidth ?? 0, 0.07);
      near(peak.told.likely, 100 * loop.peak, 0.07);
      const waits = waitsOf(craft, 20);
      const true_ = 1000 * (waits.plain + waits.filters);
      assert.ok(Math.abs(delay.told.likely - true_) < 0.4, `${delay.told.likely} ms where ${true_} is true`);
      // The span holds a row either way, for columns that are a row apart look the same.
      assert.ok(delay.told.high - delay.told.low > 2000 / rate);
      near(lag.told.likely, 2000 / (1 / craft.lag.up + 1 / craft.lag.down), 0.1);
      assert.equal(margins.told?.by, 'controller');
      near(margins.told?.crossover.likely ?? 0, loop.crossover ?? 0, 0.07);
      const margin = (180 / Math.PI) * (loop.phaseMargin ?? 0);
      assert.ok(Math.abs((margins.told?.phaseMargin.likely ?? 0) - margin) < 5);
      if (margins.told !== null) holds(margins.told.phaseMargin, margin);
    });

  it('is as late without a script: the flight itself shows which motor turns it which way', () => {
    const waits = waitsOf(flight.craft, 20);
    const truth = 1000 * (waits.plain + waits.filters);
    const [first] = answered(recording).told ?? [];
    assert.ok(first?.axis === 'roll' && first.delay.told !== null && first.lag.told !== null);
    assert.ok(Math.abs(first.delay.told.likely - truth) < 0.5, `${first.delay.told.likely}, ${truth}`);
    near(first.lag.told.likely, 2000 / (1 / flight.craft.lag.up + 1 / flight.craft.lag.down), 0.12);
    assert.match(why(first.margins), /No craft script/);
  });

  it('says about yaw that the motors’ reaction hides what waits', () => {
    const yaw = responses.told?.find((one) => one.axis === 'yaw');
    if (yaw?.curve.told != null) assert.match(why(yaw.delay), /reaction/);
  });
});
