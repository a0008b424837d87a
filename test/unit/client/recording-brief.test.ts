import assert from 'node:assert/strict';
import { recordingBrief } from '../../../client/recording/brief';
import { likelyText, measuredText, shareText } from '../../../client/recording/measured-text';
import type { AxisNoise, RecordingReport } from '../../../server/src/recording/report';
import { marginsWith, responseOf, toldSpan } from '../../support/axis-response';
import { reportWith } from '../../support/recording-report';

const span = (likely: number, half: number, unit: string) => ({
  likely,
  low: likely - half,
  high: likely + half,
  unit,
});

describe('a measured number', () => {
  it('has as many digits as its span lets stand, and says the span', () => {
    assert.equal(measuredText(span(186.347, 1.25, 'Hz')), '186.3 Hz (185.1 to 187.6 Hz)');
    assert.equal(measuredText(span(38.21, 3.4, 'mohm')), '38.2 mohm (34.8 to 41.6 mohm)');
    assert.equal(measuredText(span(-3.07, 1.1, '%')), '−3.1 % (−4.2 to −2.0 %)');
    assert.equal(measuredText(span(0.94, 0.05, '')), '0.94 (0.89 to 0.99)');
    assert.equal(likelyText(span(2412.3, 410, 'rpm')), '2410 rpm');
  });

  it('without a span is told by itself', () => {
    assert.equal(measuredText(span(-1.6426, 0, 'dB')), '−1.64 dB');
    assert.equal(measuredText(span(0, 0, '%')), '0 %');
  });

  it('that is a share is never rounded to nothing', () => {
    assert.deepEqual([0, 0.0003, 0.021, 1].map(shareText), ['0 %', 'under 0.1 %', '2.1 %', '100 %']);
  });
});

describe('what a recording said, on a line', () => {
  const axis = (name: AxisNoise['axis'], shaking: number, decibels: readonly number[]): AxisNoise => ({
    axis: name,
    spectra: [{ signal: 'gyro', frequencies: decibels.map((_, at) => 10 + 10 * at), decibels }],
    shaking: span(shaking, 0.5, 'deg/s'),
    peaksIn: 'gyro',
    peaks: [],
  });
  const report = (axes: readonly AxisNoise[]): RecordingReport =>
    reportWith({
      ...(axes.length === 0 ? {} : { noise: { told: axes, basis: '' } }),
      hover: { told: { throttle: span(31, 2, '%'), current: null, thrustScale: null }, basis: '' },
    });

  it('names the axis that shakes most, and what else was told', () => {
    const quiet = axis('roll', 1, [0, 0, 0]);
    const decibels = Array.from({ length: 50 }, (_, at) => (at === 17 ? 20 : -30));
    const brief = recordingBrief('file:///dusk.csv', report([quiet, axis('pitch', 3, decibels)]));
    assert.equal(brief.text, 'shakes most about pitch: 3.0 deg/s; hovers at 31.0 %; 0 findings');
    // The one loud bin is not lost, and no point is missing.
    assert.equal(brief.curve.filter((value) => value === 20).length, 1);
    assert.ok(brief.curve.length > 20 && brief.curve.every((value) => value === 20 || value === -30));
  });

  it('is short where no noise was told', () => {
    const { text, curve } = recordingBrief('file:///dusk.csv', report([]));
    assert.deepEqual([text, curve], ['hovers at 31.0 %; 0 findings', []]);
  });

  it('notes margins, waits and overshoot beside the figures of the sheet that estimate them', () => {
    const share = [0, 0.5, 1.12, 1];
    const step = {
      seconds: [0, 0.01, 0.02, 0.03],
      share,
      endGain: span(99, 2, '%'),
      half: span(10, 1, 'ms'),
    };
    const roll = responseOf('roll', {
      margins: marginsWith(44),
      delay: toldSpan(4, 1, 'ms'),
      step: { told: step, basis: '' },
    });
    const flown = reportWith({ responses: { told: [roll, responseOf('yaw')], basis: '' } });
    const { answers, text, shaking } = recordingBrief('file:///dusk.csv', flown);
    assert.deepEqual(answers, [
      { figure: 'loop-delay', text: 'about roll 4.0 ms (3.0 to 5.0 ms) from motor command to gyro' },
      { figure: 'roll-crossover', text: '20.0 Hz (18.0 to 22.0 Hz)' },
      { figure: 'roll-phase-margin', text: '44.0 deg (42.0 to 46.0 deg)' },
      { figure: 'roll-overshoot', text: 'about 12 %' },
    ]);
    assert.equal(text, 'phase margin 44.0 deg about roll; 0 findings');
    assert.deepEqual(
      shaking?.late?.map(({ axis, phaseMargin }) => [axis, phaseMargin?.likely]),
      [
        ['roll', 44],
        ['yaw', undefined],
      ],
    );
  });
});
