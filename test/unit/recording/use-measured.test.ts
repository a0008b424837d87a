import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { besideParts } from '../../../server/src/recording/find/beside-parts';
import { gainsFound } from '../../../server/src/recording/find/gains';
import { useMeasured } from '../../../server/src/recording/find/use-measured';
import type { MeasuredSpan, RecordingReport } from '../../../server/src/recording/report';
import { craftOf } from '../../support/findings';
import { madeRecording, reported } from '../../support/made-recording';
import { wholeCraft } from '../../support/whole-craft';

const empty = reported(madeRecording({ seconds: 5, rate: 100 }, { voltage: () => 24 }));

function viewWith(...lines: readonly string[]): CraftView {
  return new CraftView(craftOf([...wholeCraft, ...lines].join('\n')), 'one');
}

function span(likely: number, off: number, unit: string): MeasuredSpan {
  return { likely, low: likely - off, high: likely + off, unit };
}

const told = <T>(value: T) => ({ told: value, basis: '30 s' });
const none = { told: null, reason: 'Nothing.', advice: 'Fly.' };

function hovered(throttle: MeasuredSpan, expected?: MeasuredSpan): RecordingReport {
  const beside = expected === undefined ? {} : { expected };
  const hover = { throttle, current: span(11.2, 0.4, 'A'), thrustScale: span(0.81, 0.02, ''), ...beside };
  return { ...empty, hover: told(hover) };
}

function sagged(oneSecond: MeasuredSpan, tenSeconds: MeasuredSpan, expected: MeasuredSpan): RecordingReport {
  const pack = {
    openVoltage: none,
    resistanceAtOneSecond: told(oneSecond),
    resistanceAtTenSeconds: told(tenSeconds),
    usedCharge: none,
    expected,
    lowestVoltage: null,
  };
  return { ...empty, pack: told(pack) };
}

const lines = (report: RecordingReport, view: CraftView) =>
  useMeasured(report, view).flatMap(({ sets }) => sets.map(({ path, value }) => `${path} = ${value}`));

describe('what may be written as it was measured', () => {
  const flight = [
    'flight.first.date = 2026-06-12',
    'flight.first.recording = "flights/made.csv"',
    'flight.first.pack = one',
  ];

  it('is the hover, into the flight that names the recording, with its day', () => {
    const [proposal] = useMeasured(hovered(span(38.2, 1.1, '%')), viewWith(...flight));
    assert.equal(proposal?.title, 'Write hover-throttle = 38.2 %, hover-current = 11.2 A into flight first');
    assert.deepEqual(
      proposal.sets.map(({ path }) => path),
      ['flight.first.hover-throttle', 'flight.first.hover-current'],
    );
    assert.match(
      proposal.sets[0]?.comment ?? '',
      /^measured on 2026-06-12: 38\.2 % \(37\.1 to 39\.3\), over 30 s$/,
    );
  });

  it('is nothing that the script says already', () => {
    const said = ['flight.first.hover-throttle = 38 %', 'flight.first.hover-current = 11 A'];
    assert.deepEqual(lines(hovered(span(38.2, 1.1, '%')), viewWith(...flight, ...said)), []);
    const otherwise = ['flight.first.hover-throttle = 45 %', 'flight.first.hover-current = 11 A'];
    assert.deepEqual(lines(hovered(span(38.2, 1.1, '%')), viewWith(...flight, ...otherwise)), [
      'flight.first.hover-throttle = 38.2 %',
    ]);
  });

  it('is a flight of its own, with the pack, where none names the recording', () => {
    const [proposal] = useMeasured(hovered(span(38.2, 1.1, '%')), viewWith());
    const paths = proposal?.sets.map(({ path }) => path) ?? [];
    assert.ok(
      paths.includes('flight.made.hover-throttle') && paths.includes('flight.made.pack'),
      paths.join(),
    );
    assert.match(proposal?.sets.at(-1)?.comment ?? '', /^measured in made\.csv/);
  });

  it('is the pack without its leads, and the motors’ time constant where three of them tell it', () => {
    const [resistance] = lines(
      sagged(span(40, 1, 'mohm'), span(48, 1, 'mohm'), span(47, 5, 'mohm')),
      viewWith(),
    );
    const [, own] = /^pack\.one\.resistance = ([\d.]+) mohm$/.exec(resistance ?? '') ?? [];
    assert.ok(Number(own) > 30 && Number(own) < 40, resistance);
    const motor = (lag: number) => ({
      motor: 1,
      mean: span(40, 1, '%'),
      atFull: 0,
      atIdle: 0,
      harder: span(0, 1, '%'),
      lag: told(span(lag, 2, 'ms')),
    });
    const motors = (...lags: readonly number[]) => ({ ...empty, motors: told(lags.map(motor)) });
    assert.deepEqual(lines(motors(30, 32, 34), viewWith()), ['motor.response-time = 32 ms']);
    assert.deepEqual(lines(motors(30, 32), viewWith()), []);
    assert.deepEqual(lines(motors(30, 32, 34), viewWith('motor.response-time = 31 ms')), []);
  });
});

describe('gains as they were measured', () => {
  const gain = (axis: 'roll' | 'pitch', likely: number) =>
    ({
      axis,
      term: 'proportional',
      gain: { told: span(likely, 0.004, '%/(deg/s)'), basis: '24 s, 97 % of the motors’ command told' },
    }) as const;
  const report: RecordingReport = { ...empty, gains: told([gain('roll', 0.08712), gain('pitch', 0.1)]) };

  it('may be written where no line sets them, with their span and what it rests on', () => {
    const bare = wholeCraft.filter((line) => !line.startsWith('control.roll.proportional'));
    const view = new CraftView(craftOf(bare.join('\n')), 'one');
    const [proposal] = useMeasured(report, view);
    assert.equal(proposal?.title, 'Write the gains of roll as they were measured');
    assert.deepEqual(proposal.sets, [
      {
        path: 'control.roll.proportional',
        value: '0.0871 %/(deg/s)',
        comment:
          'measured in made.csv: 0.0871 %/(deg/s) (0.0831 to 0.0911), over 24 s, 97 % of the motors’ command told',
      },
    ]);
  });

  it('are not written over what the script says; one that is another than it says is found', () => {
    assert.deepEqual(lines(report, viewWith()), []);
    assert.deepEqual(gainsFound(report, viewWith()), []);
    const differing = { ...empty, gains: told([gain('roll', 0.15), gain('pitch', 0.1)]) };
    assert.deepEqual(gainsFound(differing, viewWith()), [
      {
        id: 'gains/differ',
        values: {
          axis: 'roll',
          measured: '0.1500 %/(deg/s) (0.1460 to 0.1540)',
          written: '0.09 %/(deg/s)',
        },
        proposals: [],
      },
    ]);
  });
});

describe('a recording beside the parts of a script', () => {
  const found = (report: RecordingReport) =>
    besideParts(report, viewWith()).map(({ id, proposals }) => `${id}, ${proposals.length}`);

  it('shows a pack that sags more than they let expect, and one that sags less', () => {
    const measured = [span(40, 1, 'mohm'), span(48, 2, 'mohm')] as const;
    assert.deepEqual(found(sagged(...measured, span(35, 8, 'mohm'))), ['pack/sags-more, 1']);
    assert.deepEqual(found(sagged(...measured, span(70, 15, 'mohm'))), ['pack/holds-more, 1']);
    assert.deepEqual(found(sagged(...measured, span(45, 8, 'mohm'))), []);
  });

  it('shows a hover that is off, and none that agrees or that nothing is known of', () => {
    assert.deepEqual(found(hovered(span(45, 1, '%'), span(36, 6, '%'))), ['hover/off, 1']);
    assert.deepEqual(found(hovered(span(45, 1, '%'), span(42, 6, '%'))), []);
    assert.deepEqual(found(hovered(span(45, 1, '%'))), []);
  });
});
