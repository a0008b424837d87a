import assert from 'node:assert/strict';
import { groundOf } from '../../../../server/src/board/learn/learned-profile';
import { learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { meansOf } from '../../../../server/src/board/learn/propose/proposal';
import { proposals } from '../../../../server/src/board/learn/propose/propose';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { measuredCounts } from '../../../../server/src/features/board/measured-counts';
import type { MeasuredGain } from '../../../../server/src/recording/report';
import { boardListing } from '../../../simulator/board-listing';
import { Random } from '../../../simulator/random';
import { testCatalog } from '../../../support/catalog';
import { confirmedLayout, flownReport, recordingOf } from '../../../support/recorded';
import { randomFlight } from '../../../support/simulated-flights';

type Axis = MeasuredGain['axis'];

/** What is told of the proportional gains of a text with these numbers, each with half a span. */
function told(
  numbers: Readonly<Record<Axis, number>>,
  measured: Readonly<Partial<Record<Axis, readonly [likely: number, off: number]>>>,
) {
  const axes = ['roll', 'pitch', 'yaw'] as const;
  const text = axes.map((axis) => `${axis} grip = ${numbers[axis]}`).join('\n');
  const listing = readListing(`[hold]\n${text}\n`, null);
  const settings = learnedSettings(listing);
  const taken = axes.map((axis, at) => {
    const setting = settings[at];
    assert.ok(setting !== undefined);
    return { setting, means: `control.${axis}.proportional` };
  });
  const gains = axes.map((axis): MeasuredGain => {
    const [likely, off] = measured[axis] ?? [null, 0];
    const gain =
      likely === null
        ? { told: null, reason: `Too little movement about ${axis}.`, advice: 'Fly more.' }
        : { told: { likely, low: likely - off, high: likely + off, unit: '%/(deg/s)' }, basis: '20 s' };
    return { axis, term: 'proportional', gain };
  });
  const [family] = measuredCounts(taken, gains, groundOf(listing, settings, testCatalog));
  assert.ok(family !== undefined);
  return family;
}

/** What is told of the families of a simulated board, by its listing in words of its own and a flight with it. */
async function ofSimulatedBoard(seed: number) {
  const flight = randomFlight(seed);
  const listing = readListing(boardListing(flight, new Random(seed)), null);
  const settings = learnedSettings(listing);
  const ground = groundOf(listing, settings, testCatalog);
  const taken = proposals(settings, testCatalog).flatMap((one, at) => {
    const setting = settings[at];
    return one === null || setting === undefined ? [] : [{ setting, means: meansOf(one) }];
  });
  const recording = await recordingOf(flight.bytes, [confirmedLayout(flight.layout)]);
  const { gains } = flownReport(recording, flight.view);
  assert.ok(gains.told !== null);
  return { factors: flight.factors, families: measuredCounts(taken, gains.told, ground) };
}

describe('what a board’s 1 is by a recording', () => {
  it('is found from a listing in words of its own and a flight of a board with numbers of its own', async () => {
    const seed = 3;
    const { factors, families } = await ofSimulatedBoard(seed);
    for (const term of ['proportional', 'integral'] as const) {
      const truth = 100 * (Math.PI / 180) * factors[term];
      const family = families.find((one) => one.term === term);
      assert.ok(family?.one != null, `${seed} ${term}: ${family?.evidence}`);
      const { low, high } = family.one;
      assert.ok(low <= truth && truth <= high, `${seed} ${term}: 1 is ${truth}; ${family.evidence}`);
      assert.equal(family.numbers.length, 3);
    }
  }).timeout(60_000);

  it('is one round number for all axes of a gain, with the evidence, and rows to confirm', () => {
    const family = told({ roll: 47, pitch: 47, yaw: 90 }, { roll: [0.235, 0.01], pitch: [0.24, 0.012] });
    assert.equal(family.taken, '0.005 %/(deg/s)');
    assert.equal(
      family.evidence,
      '47 on roll was 0.235 %/(deg/s) (0.225 to 0.245), 47 on pitch 0.240 %/(deg/s) (0.228 to 0.252); so 1 is 0.005 %/(deg/s) (measured: 0.00483 to 0.00526). On yaw nothing was measured: counted as the others.',
    );
    assert.deepEqual(
      family.numbers.map(({ quantity }) => quantity),
      ['0.235 %/(deg/s)', '0.235 %/(deg/s)', '0.45 %/(deg/s)'],
    );
    assert.deepEqual(
      family.numbers.map(({ row }) => [row?.means, row?.counts?.unit, row?.counts?.scale]),
      ['roll', 'pitch', 'yaw'].map((axis) => [`control.${axis}.proportional`, '%/(deg/s)', 200]),
    );
  });

  it('is as it was measured where no round number, or more than one, lies in its span', () => {
    assert.equal(told({ roll: 10, pitch: 0, yaw: 0 }, { roll: [0.072, 0.003] }).taken, '0.0072 %/(deg/s)');
    assert.equal(told({ roll: 10, pitch: 0, yaw: 0 }, { roll: [0.022, 0.004] }).taken, '0.0022 %/(deg/s)');
  });

  it('says that 0 is nothing where numbers far apart agree', () => {
    assert.match(
      told({ roll: 20, pitch: 60, yaw: 0 }, { roll: [0.1, 0.005], pitch: [0.3, 0.015] }).evidence,
      /Numbers far apart agree on it, so that 0 is nothing\.$/,
    );
  });

  it('is not proposed where axes disagree, and says what each would make of it', () => {
    const family = told({ roll: 47, pitch: 47, yaw: 47 }, { roll: [0.235, 0.01], yaw: [0.47, 0.02] });
    assert.equal(family.one, null);
    assert.ok(family.numbers.every(({ row }) => row === null));
    assert.match(
      family.evidence,
      /1 would be 0\.005 %\/\(deg\/s\) by roll, 0\.01 %\/\(deg\/s\) by yaw\. They are not counted alike, or these are not the numbers that were flown: nothing is proposed/,
    );
  });

  it('is not proposed where nothing was measured, with each reason', () => {
    const { evidence, one } = told({ roll: 47, pitch: 47, yaw: 47 }, {});
    assert.equal(one, null);
    assert.match(evidence, /^Nothing was measured\. roll: Too little movement about roll\. pitch: /);
    assert.match(told({ roll: 0, pitch: 0, yaw: 0 }, {}).evidence, /^All of them are 0/);
  });
});
