import assert from 'node:assert/strict';
import { recordingChangesText } from '../../../../server/src/cli/report/recording-changes-text';
import { recordingText } from '../../../../server/src/cli/report/recording-text';
import type { Terminal } from '../../../../server/src/cli/terminal';
import type { LearntTable } from '../../../../server/src/recording/open-recording';
import type { MeasuredSpan, MotorWork, Peak, RecordingReport } from '../../../../server/src/recording/report';
import { madeRecording, reported } from '../../../support/made-recording';

const terminal: Terminal = {
  out: async () => undefined,
  message: () => undefined,
  show: () => undefined,
  hasColour: false,
  width: null,
  canShowProgress: false,
  readStandardInput: async () => new Uint8Array(),
};
const table: LearntTable = {
  head: {
    dialect: { separator: ',', decimalComma: false },
    columns: [],
    cells: 0,
    linesAbove: 0,
    headingLine: null,
    isSimulated: false,
    remarks: [],
  },
  confirmed: null,
  proposed: [],
  layout: { version: 1, columns: [] },
};
const span = (likely: number, half: number, unit: string): MeasuredSpan => ({
  likely,
  low: likely - half,
  high: likely + half,
  unit,
});
const bare = reported(madeRecording({ seconds: 10, rate: 200 }, { voltage: () => 16 }));

function textOf(changes: Partial<RecordingReport>): string {
  return recordingText({ ...bare, ...changes }, table, terminal);
}

function motor(number: number, harder: MeasuredSpan, atFull = 0): MotorWork {
  const lag = { told: null, reason: 'Not logged.', advice: '' } as const;
  return { motor: number, mean: span(39.2, 2.5, '%'), atFull, atIdle: 0, harder, lag };
}

function tone(changes: Partial<Peak>): string {
  const peak: Peak = {
    frequency: span(137.2, 0.5, 'Hz'),
    aboveFloor: span(5.47, 1.5, 'dB'),
    order: null,
    source: 'standing',
    mayBeFolded: false,
    left: null,
    ...changes,
  };
  const roll = {
    axis: 'roll',
    spectra: [],
    shaking: span(2.5, 0.06, 'deg/s'),
    peaksIn: 'gyro',
    peaks: [peak],
  } as const;
  return textOf({ noise: { told: [roll], basis: '10 s' } });
}

describe('what a recording says on the command line', () => {
  it('is told of motors with no more digits than the span lets stand', () => {
    const all = [motor(1, span(-0.0185, 0.6, '%')), motor(2, span(8.72, 0.6, '%'), 0.0213)];
    const text = textOf({ motors: { told: all, basis: '10 s' } });
    assert.match(
      text,
      /motor 1: 39\.2 % \(36\.7 to 41\.7\) on average, as hard as all together, within 0\.6 %; at full never, at idle never\n/,
    );
    assert.match(
      text,
      /8\.7\d? % \(8\.1\d? to 9\.3\d?\) harder than all together; at full 2\.1 % of the time/,
    );
  });

  it('tells of a tone what the filters take off it, as far as anybody can hear', () => {
    assert.match(
      tone({ left: -7.87 }),
      /137\.2 Hz.*5\.5 dB \(4\.0 to 7\.0\) above.*; the script’s filters take 8 dB off it\n/,
    );
    assert.match(tone({ left: -0.335 }), /; the script’s filters take nothing off it\n/);
    assert.match(tone({ left: -80 }), /; the script’s filters take 80 dB or more off it\n/);
    assert.match(tone({ mayBeFolded: true }), /; perhaps a higher tone, which too few rows a second show/);
  });

  it('begins with what has grown, of two', () => {
    const sentence = 'It shakes twice as much.';
    const grown = [{ id: 'shake/grown', level: 'risk', sentence, advice: 'Look.', proposals: [] } as const];
    const text = recordingChangesText(bare, bare, { changes: [], grown }, terminal);
    assert.match(text, /What has grown\n {2}risk: It shakes twice as much\.\n {4}Look\./);
  });
});
