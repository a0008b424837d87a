import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { findingsOf } from '../../../server/src/recording/find/findings-of';
import { useMeasured } from '../../../server/src/recording/find/use-measured';
import type { AxisResponse, MeasuredMargins, RecordingReport } from '../../../server/src/recording/report';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { reportWith } from '../../support/recording-report';
import { randomFlight } from '../../support/simulated-flights';

const none = { told: null, reason: 'Not flown.', advice: 'Fly it.' } as const;
const nothing = {
  curve: none,
  bandwidth: none,
  peak: none,
  phaseDelay: none,
  step: none,
  delay: none,
  lag: none,
  margins: none,
} as const;

function span(likely: number, unit: string, off = 0.1) {
  return { likely, low: likely * (1 - off), high: likely * (1 + off), unit };
}

const told = <T>(value: T) => ({ told: value, basis: '20 s of quick sticks' });

function answered(response: Partial<AxisResponse>): RecordingReport {
  return reportWith({ responses: told([{ axis: 'roll', ...nothing, ...response }]) });
}

function margins(phase: number, gain: number | null, sensitivity: number): MeasuredMargins {
  return {
    by: 'controller',
    crossover: span(17, 'Hz'),
    phaseMargin: span(phase, 'deg'),
    gainMargin: gain === null ? null : span(gain, ''),
    sensitivityPeak: span(sensitivity, ''),
  };
}

function said(report: RecordingReport, view: CraftView | null = null): readonly string[] {
  return findingsOf(report, view, testCatalog.recordings.findings).map(({ sentence }) => sentence);
}

describe('findings about how an axis follows', () => {
  it('say that it is near to swinging where all of a margin’s span is too small', () => {
    assert.deepEqual(said(answered({ margins: told(margins(30, 1.6, 2.6)) })), [
      'As it was flown, roll is near to swinging by itself: a phase margin of 30.0 deg (27.0 to 33.0) at 17 Hz, 1.60 (1.44 to 1.76) times the gain makes it swing, knocks made 2.60 (2.34 to 2.86) times as large.',
    ]);
    assert.deepEqual(said(answered({ margins: told(margins(42, null, 2.1)) })), []);
    const blurred = { ...margins(29, null, 1.9), phaseMargin: span(29, 'deg', 0.6) };
    assert.match(said(answered({ margins: told(blurred) }))[0] ?? '', /a phase margin of 29 deg /);
    assert.deepEqual(said(answered({ margins: told(margins(60, 4, 1.3)) })), []);
  });

  it('say that it shoots past where no margin is told', () => {
    assert.match(
      said(answered({ peak: told(span(190, '%')) }))[0] ?? '',
      /^At its liveliest, 190 % .* about roll/,
    );
    assert.deepEqual(said(answered({ peak: told(span(160, '%')) })), []);
    assert.deepEqual(said(answered({ peak: told(span(190, '%')), margins: told(margins(60, 4, 1.3)) })), []);
  });

  const { view } = randomFlight(3);

  it('say that it is later, and slower, than the script lets expect', () => {
    const step = told({ seconds: [0], share: [0], endGain: span(100, '%'), half: span(300, 'ms') });
    const [later, slower] = said(answered({ delay: told(span(30, 'ms')), step }), view);
    assert.match(later ?? '', /the gyro 30\.0 ms .* are waited about roll, .* expected\.$/);
    assert.match(slower ?? '', /come 300 ms .* after it about roll, and by the script after \d/);
    const quick = told({ ...step.told, half: span(3, 'ms') });
    assert.deepEqual(said(answered({ delay: told(span(1, 'ms')), step: quick }), view), []);
    assert.deepEqual(
      said(answered({ delay: told(span(30, 'ms')), step }), new CraftView(craftOf(''), null)),
      [],
    );
  });

  it('offer the lag as the motors’ response time where no speeds were logged', () => {
    const empty = new CraftView(craftOf('[motor]\nkv = 1900 rpm/V\n'), null);
    const [proposal] = useMeasured(answered({ lag: told(span(24, 'ms')) }), empty);
    assert.equal(proposal?.title, 'Write response-time = 24 ms for the motors');
    assert.match(proposal?.sets[0]?.comment ?? '', /24\.0 ms \(21\.6 to 26\.4\), from what they are told/);
    assert.deepEqual(useMeasured(answered({}), empty), []);
  });
});
