import * as z from 'zod';
import { axisRow, measured, measuredSpan as span, version } from './common';

const axis = z.enum(['roll', 'pitch', 'yaw']);
const signal = z.enum(['gyro', 'unfiltered-gyro']);
const frequencies = z.array(z.number()).describe('Hz, rising.');

const peak = z.object({
  frequency: span,
  aboveFloor: span,
  order: span.nullable().describe('How often it comes for each turn of a motor; null for a standing one.'),
  source: z.string().describe('In words.'),
  mayBeFolded: z
    .boolean()
    .describe('Whether it may be a higher tone that too few rows a second show at a lower frequency.'),
  motor: z.int().optional().describe('That shakes by far the most with it.'),
  left: z.number().nullable().describe('dB that the script’s filters leave; null where that is not known.'),
});

const axisNoise = z.object({
  axis,
  spectra: z.array(
    z.object({ signal, frequencies, decibels: z.array(z.number()).describe('dB of (deg/s)²/Hz') }),
  ),
  shaking: span,
  peaksIn: signal,
  peaks: z.array(peak),
  untold: z
    .int()
    .optional()
    .describe('How many tones come and go beside the loudest of such; left out where none does.'),
});

const noiseMap = z.object({
  axis,
  signal,
  against: z.enum(['throttle', 'motor speed', 'motor output']),
  edges: z.array(z.number()).describe('Of the columns, one more than there are.'),
  frequencies,
  decibels: z.array(z.array(z.number().nullable())).describe('A row for each frequency.'),
});

const motor = z.object({
  motor: z.int(),
  mean: span,
  atFull: z.number().describe('Share of the time.'),
  atIdle: z.number(),
  harder: span.describe('Than all together.'),
  lag: measured(span),
});

const pack = z.object({
  openVoltage: measured(span),
  resistanceAtOneSecond: measured(span).describe('Of pack and leads together.'),
  resistanceAtTenSeconds: measured(span),
  usedCharge: measured(span),
  expected: span.optional().describe('By the script, of pack and leads after ten seconds.'),
  lowestVoltage: span.nullable(),
});

const hover = z.object({
  throttle: span,
  current: span.nullable(),
  expected: span.optional().describe('Throttle that the script’s parts let expect at that voltage.'),
  thrustScale: span.nullable(),
});
const link = z.object({ interval: span, longestGap: span, whole: span });

const response = z.object({
  axis,
  curve: measured(
    z.object({
      frequencies,
      gain: z.array(z.number()).describe('dB'),
      phase: z.array(z.number()).describe('deg, below 0 where it comes late.'),
      coherence: z.array(z.number()),
      off: z.array(z.number()).describe('Share of the gain, and rad of the phase, nine times in ten.'),
    }),
  ).describe('From what the sticks ask for to the gyro.'),
  bandwidth: measured(span),
  peak: measured(span),
  phaseDelay: measured(span),
  step: measured(
    z.object({
      seconds: z.array(z.number()),
      share: z.array(z.number()).describe('Of what was asked for.'),
      endGain: span,
      half: span.describe('Until half of the end has come.'),
    }),
  ),
  delay: measured(span).describe('From what the motors are told to the gyro, beside the lag.'),
  lag: measured(span),
  margins: measured(
    z.object({
      by: z.enum(['controller', 'answer']),
      crossover: span,
      phaseMargin: span,
      gainMargin: span.nullable().describe('null where it lies above what was flown, or is known too badly.'),
      sensitivityPeak: span,
    }),
  ),
});

const gain = z.object({
  axis,
  term: z.enum(['proportional', 'integral', 'derivative']),
  gain: measured(span),
});

const proposal = z.object({
  title: z.string(),
  sets: z.array(z.object({ path: z.string(), value: z.string(), comment: z.string() })),
});

const recordingReportForm = z
  .object({
    name: z.string(),
    flight: z.int().describe('Counted from 1.'),
    flights: z.int(),
    seconds: z.number(),
    rate: z.number().describe('Rows a second.'),
    isSimulated: z.boolean(),
    leftOut: z.array(z.string()).describe('What was not read, mended or is to be known, a sentence each.'),
    findings: z.array(
      z.object({
        id: z.string(),
        level: z.enum(['must-fix', 'risk', 'note']),
        sentence: z.string(),
        advice: z.string(),
        proposals: z.array(proposal),
      }),
    ),
    noise: measured(z.array(axisNoise)),
    noiseMaps: measured(z.array(noiseMap)),
    motors: measured(z.array(motor)),
    pack: measured(pack),
    hover: measured(hover),
    link: measured(link),
    responses: measured(z.array(response)),
    gains: measured(z.array(gain)).describe('The board’s own gains, as they work.'),
    proposals: z.array(proposal),
  })
  .describe('What one flight says.');

export const recordingForm = z.object({
  version,
  columns: z
    .array(
      z.object({
        heading: z.string(),
        channel: z
          .string()
          .optional()
          .describe('gyro.roll, motor.1, voltage, time; left out where it is not read.'),
        unit: z.string().optional(),
        scale: z.number().optional(),
        zero: z.number().optional(),
        full: z.number().optional(),
        reversed: z.boolean().optional(),
        why: z.string().nullable().describe('What speaks for it; null where a layout says so.'),
        asks: z.array(z.string()).describe('What is to be said of it.'),
      }),
    )
    .describe('What each column is taken for.'),
  report: recordingReportForm.nullable().describe('null with --columns.'),
  rows: z
    .array(axisRow)
    .nullable()
    .describe('What is told axis by axis, beside what the script of --craft says; null with --columns.'),
  before: recordingReportForm.nullable().describe('Of the earlier recording, with --compare.'),
  changes: z
    .array(
      z.object({
        question: z.enum(['shake', 'follow', 'late', 'motors', 'pack', 'hover', 'link', 'gains']),
        title: z.string(),
        before: span.nullable(),
        after: span.nullable(),
        turn: z.enum(['better', 'worse']).nullable().describe('null where the spans overlap, or neither is.'),
      }),
    )
    .nullable()
    .describe('What has changed, with --compare.'),
});
