import assert from 'node:assert/strict';
import { flightRows } from '../../../../server/src/recording/estimate/flight-rows';
import { measuredGains } from '../../../../server/src/recording/estimate/gains/gains';
import type { MeasuredAnswer, RecordingReport } from '../../../../server/src/recording/report';
import { csvOf } from '../../../simulator/csv';
import { layouts } from '../../../simulator/layouts';
import { type Act, steeredFlight } from '../../../simulator/pilot';
import { Random } from '../../../simulator/random';
import type { Recorder } from '../../../simulator/recorder';
import { simulated } from '../../../simulator/simulated-flight';
import { atOnce } from '../../../support/at-once';
import { confirmedLayout, flownReport, recordingOf } from '../../../support/recorded';
import { type RandomFlight, randomFlight } from '../../../support/simulated-flights';

/** A craft that is told of when it is flown well. */
const known: RandomFlight = randomFlight(75);

const calm: readonly Act[] = [
  { kind: 'idle', seconds: 0.7 },
  { kind: 'take-off', seconds: 2.3 },
  { kind: 'hover', seconds: 10 },
  { kind: 'land', seconds: 2.5 },
];

interface Flown {
  readonly acts?: readonly Act[];
  readonly recorder?: Partial<Recorder>;
  /** What the logger leaves out. */
  readonly without?: RegExp;
  /** Columns that count the other way than is said of them. */
  readonly turned?: RegExp;
  /** Columns that hold where a stick stands, and not what it asks for. */
  readonly standing?: RegExp;
}

const steered = (rates: readonly number[]) => steeredFlight(20, rates, new Random(9));

async function flown({ acts = steered([3, 3, 0]), recorder = {}, without, turned, standing }: Flown) {
  const whole = { ...known.recorder, gaps: [], wantedLate: 0, outputsLate: 0, ...recorder };
  const { rows } = simulated(known.craft, acts, whole, 5);
  const layout = layouts.get('bracketed');
  if (layout === undefined) throw new Error('the layout is missing');
  const columns = layout.columns.filter(({ of }) => without?.test(of ?? '') !== true);
  const confirmed = confirmedLayout({ ...layout, columns });
  const written = columns.map((one) =>
    turned?.test(one.of ?? '') === true
      ? { ...one, factor: -one.factor }
      : standing?.test(one.of ?? '') === true
        ? { ...one, offset: 1500 }
        : one,
  );
  const bytes = csvOf(rows, { ...layout, columns: written });
  return flownReport(await recordingOf(bytes, [confirmed]), known.view);
}

type FlownReport = Pick<RecordingReport, 'responses' | 'gains'>;

/** Every answer of how it follows and of the board's gains, by a name. */
function answersOf({ responses, gains }: FlownReport): ReadonlyMap<string, MeasuredAnswer<unknown>> {
  const all = new Map<string, MeasuredAnswer<unknown>>();
  if (responses.told === null) all.set('responses', responses);
  for (const { axis, ...answers } of responses.told ?? [])
    for (const [name, answer] of Object.entries(answers)) all.set(`${name} of ${axis}`, answer);
  if (gains.told === null) all.set('gains', gains);
  for (const { axis, term, gain } of gains.told ?? []) all.set(`${term} of ${axis}`, gain);
  return all;
}

function allWithheld(report: FlownReport): readonly string[] {
  return [...answersOf(report)].map(([name, answer]) =>
    'reason' in answer ? `${answer.reason} ${answer.advice}` : assert.fail(`${name} is told`),
  );
}

const safely = /calm hover.*observer beside|observer beside.*calm hover/;

describe('a simulated flight that does not tell', () => {
  it('is one that hovers: how it follows is withheld, with the reason and what to fly instead, safely', async () => {
    const { responses, gains } = await flown({ acts: calm });
    for (const { axis, ...answers } of responses.told ?? assert.fail(responses.reason))
      for (const [name, answer] of Object.entries(answers)) {
        assert.ok('reason' in answer, `${name} of ${axis} is told`);
        assert.match(answer.reason, /asked for too little/);
        assert.match(answer.advice, safely);
      }
    for (const { axis, term, gain } of gains.told ?? assert.fail(gains.reason)) {
      assert.ok('reason' in gain, `${term} of ${axis} is told`);
      assert.match(gain.reason, /too calm to confirm/);
      assert.match(gain.advice, safely);
    }
  });

  it('is any that only hovers: nothing is told of the gains of other craft either', async () => {
    for (const seed of [15, 33, 57]) {
      const { craft, recorder, view } = randomFlight(seed);
      const { rows } = simulated(craft, calm, { ...recorder, gaps: [] }, seed);
      const layout = layouts.get('bracketed') ?? assert.fail();
      const flight = flightRows(await recordingOf(csvOf(rows, layout), [confirmedLayout(layout)]), 1);
      const { told } = atOnce(measuredGains(flight ?? assert.fail(), view));
      for (const { axis, term, gain } of told ?? assert.fail())
        assert.ok('reason' in gain && /too calm/.test(gain.reason), `${seed}: ${term} of ${axis}`);
    }
  });

  it('is one whose motors stand at a limit: it is said, and smaller steps are asked for', async () => {
    const report = await flown({ acts: steered([30, 30, 0]) });
    const roll = report.responses.told?.find(({ axis }) => axis === 'roll');
    assert.ok(roll !== undefined && roll.curve.told === null);
    assert.match(roll.curve.reason, /^Motors stood at a limit/);
    assert.match(roll.curve.advice, /smaller steps/);
  });

  it('is one with rows too seldom', async () => {
    const texts = allWithheld(await flown({ recorder: { rate: 25 } }));
    for (const text of texts)
      assert.match(text, /Rows come .* times a second.*Log \d+ rows a second or more/);
  });

  it('is one without what the sticks asked for', async () => {
    const texts = allWithheld(await flown({ without: /^wanted/ }));
    for (const text of texts) assert.match(text, /No column says .* asked for.*[Ll]og/);
  });

  it('is one whose gyro counts the other way than is said: nothing is told of margins and gains', async () => {
    const report = await flown({ turned: /^gyro\.roll/ });
    for (const [name, answer] of answersOf(report)) {
      if (!/of roll$/.test(name) || !/proportional|margins|bandwidth|delay/.test(name)) continue;
      assert.ok('reason' in answer, `${name} is told: ${JSON.stringify(answer.told)}`);
      assert.match(
        `${answer.reason} ${answer.advice}`,
        /sign|the other way|confirm/i,
        `${name}: ${answer.reason} ${answer.advice}`,
      );
    }
  });

  it('is one whose column says where the stick stands', async () => {
    const report = await flown({ standing: /^wanted\.roll/ });
    const roll = report.responses.told?.find(({ axis }) => axis === 'roll');
    assert.ok(roll !== undefined && roll.margins.told === null);
    assert.match(roll.margins.reason, /rests at 15\d\d deg\/s: that is where a stick stands/);
  });

  it('tells of columns that are a row apart with spans that hold what is true', async () => {
    const [plain, skewed] = [await flown({}), await flown({ recorder: { outputsLate: 1 / known.rate } })];
    for (const axis of ['roll', 'pitch'] as const) {
      const [one, other] = [plain, skewed].map(
        ({ responses }) => responses.told?.find((each) => each.axis === axis)?.delay.told,
      );
      assert.ok(one != null && other != null);
      assert.ok(
        other.low <= one.likely && one.likely <= other.high,
        `${one.likely} in ${other.low} to ${other.high}`,
      );
    }
  });
});
