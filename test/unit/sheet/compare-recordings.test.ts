import assert from 'node:assert/strict';
import type { MeasuredSpan, Peak, RecordingReport } from '../../../server/src/recording/report';
import { recordingChanges } from '../../../server/src/sheet/compare/recordings';
import { marginsWith, responseOf, toldSpan } from '../../support/axis-response';
import { reportWith } from '../../support/recording-report';

const withheld = { told: null, reason: 'Not logged.', advice: 'Log it.' } as const;
const told = <T>(value: T) => ({ told: value, basis: '30 s' });
const span = (likely: number, half: number, unit: string): MeasuredSpan => ({
  likely,
  low: likely - half,
  high: likely + half,
  unit,
});

function shaking(size: number, peaks: readonly Peak[] = []): RecordingReport {
  const roll = {
    axis: 'roll',
    spectra: [],
    shaking: span(size, 0.5, 'deg/s'),
    peaksIn: 'gyro',
    peaks,
  } as const;
  return reportWith({ noise: told([roll]) });
}

function peak(frequency: number, above: number, left: number | null, order: number | null = null): Peak {
  return {
    frequency: span(frequency, 2, 'Hz'),
    aboveFloor: span(above, 1, 'dB'),
    order: order === null ? null : span(order, 0.02, ''),
    source: 'standing',
    mayBeFolded: false,
    left,
  };
}

describe('two recordings side by side', () => {
  const rows = (before: RecordingReport, after: RecordingReport) =>
    recordingChanges(before, after).map(({ title, turn }) => [title, turn]);

  it('are alike where filters leave the same to a part of a decibel', () => {
    const turns = recordingChanges(shaking(3, [peak(137, 20, -7.79)]), shaking(3, [peak(137, 20, -7.81)]));
    assert.ok(turns.every(({ turn }) => turn === null));
  });

  it('differ only where their spans don’t overlap', () => {
    assert.deepEqual(rows(shaking(3), shaking(5)), [['Shaking about roll', 'worse']]);
    assert.deepEqual(rows(shaking(5), shaking(3)), [['Shaking about roll', 'better']]);
    assert.deepEqual(rows(shaking(3), shaking(3.8)), [['Shaking about roll', null]]);
  });

  it('have the same tone where its frequency or its order is the same, and a new one beside it', () => {
    const before = shaking(3, [peak(180, 20, -2), peak(220, 15, -60, 1)]);
    const after = shaking(3, [peak(260, 15, -60, 1.01), peak(181, 12, -20), peak(400, 9, null)]);
    const changes = recordingChanges(before, after).slice(1);
    assert.deepEqual(
      changes.map(({ title, turn }) => [title, turn]),
      [
        ['Tone about roll at 181 Hz, above the floor', 'better'],
        ['Tone about roll at 181 Hz, what the filters leave', 'better'],
        ['Tone about roll 1.01 times a motor turn, above the floor', null],
        ['Tone about roll 1.01 times a motor turn, what the filters leave', null],
        ['Tone about roll at 400 Hz, above the floor', null],
      ],
    );
    assert.equal(changes.at(-1)?.before, null);
  });

  it('have margins that are better where they are larger, and gains that are neither', () => {
    const flown = (margin: number, bandwidth: number, gain: number) =>
      reportWith({
        responses: told([
          responseOf('roll', { margins: marginsWith(margin), bandwidth: toldSpan(bandwidth, 1, 'Hz') }),
        ]),
        gains: told([
          { axis: 'roll', term: 'proportional', gain: toldSpan(gain, 0.01, '%/(deg/s)') } as const,
        ]),
      });
    const changes = recordingChanges(flown(50, 18, 0.5), flown(40, 23, 0.6));
    const turns = new Map(changes.map(({ question, title, turn }) => [`${question}: ${title}`, turn]));
    assert.deepEqual(Object.fromEntries(turns), {
      'follow: Follows up to (−3 dB), roll': 'better',
      'late: Crossover, roll': null,
      'late: Phase margin, roll': 'worse',
      'late: Most that a disturbance grows by, roll': null,
      'gains: Proportional, roll': null,
    });
  });

  it('have a motor that works more like the others for the better, whichever way it differed', () => {
    const with_ = (harder: number) =>
      reportWith({
        motors: told([
          {
            motor: 3,
            mean: span(38, 1, '%'),
            atFull: 0,
            atIdle: 0,
            harder: span(harder, 1, '%'),
            lag: withheld,
          },
        ]),
      });
    assert.deepEqual(rows(with_(-9), with_(2)), [['Motor 3 works harder by', 'better']]);
    assert.deepEqual(rows(with_(2), with_(9)), [['Motor 3 works harder by', 'worse']]);
  });

  it('say what only one of them tells, and nothing of what neither does', () => {
    const pack = {
      openVoltage: withheld,
      resistanceAtOneSecond: told(span(38, 3, 'mohm')),
      resistanceAtTenSeconds: withheld,
      usedCharge: withheld,
      lowestVoltage: null,
    };
    const link = { interval: span(8, 0.1, 'ms'), longestGap: span(16, 1, 'ms'), whole: span(99, 0.2, '%') };
    const [one, ...more] = recordingChanges(reportWith({}), reportWith({ pack: told(pack) }));
    assert.deepEqual(
      [one?.title, one?.before, one?.turn, more.length],
      ['Resistance at once', null, null, 0],
    );
    const fewer = { ...link, whole: span(90, 0.2, '%') };
    assert.deepEqual(rows(reportWith({ link: told(link) }), reportWith({ link: told(fewer) })).at(-1), [
      'Frames that came',
      'worse',
    ]);
    assert.deepEqual(recordingChanges(reportWith({}), reportWith({})), []);
  });
});
