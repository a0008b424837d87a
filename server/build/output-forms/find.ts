import * as z from 'zod';
import { found, packName, version } from './common';
import { moved } from './compare';

const point = z
  .object({
    delay: z.number().describe('ms that the filters delay.'),
    noise: z
      .number()
      .describe(
        '% of throttle that comes of a tremble of 1 deg/s at the motors’ tone; with measured noise the root of the sum of its square and of that of what the measured noise comes to.',
      ),
  })
  .describe('Means over the packs.');

const reading = {
  pack: packName,
  delay: z.number(),
  noise: z.number(),
  tones: z
    .array(
      z.object({
        id: z.string().describe('Of the figure.'),
        title: z.string(),
        left: z.number().describe('dB'),
      }),
    )
    .describe('What is left of each motor tone.'),
  measured: z
    .object({
      to: z.number().describe('Hz; beyond half of the rate of rows nothing is known.'),
      axes: z.array(
        z.object({
          axis: z.enum(['roll', 'pitch', 'yaw']),
          unfiltered: z.number().describe('deg/s rms, as it was measured before the board’s filters.'),
          left: z.number().describe('deg/s rms, behind the filters of the gyro.'),
        }),
      ),
      tones: z
        .array(
          z.object({
            axis: z.enum(['roll', 'pitch', 'yaw']),
            frequency: z.number().describe('Hz'),
            above: z.number().describe('dB over the noise about it, before the filters.'),
            left: z.number().describe('dB'),
          }),
        )
        .describe('Tones that stand whatever the motors do.'),
      command: z
        .number()
        .nullable()
        .describe(
          '% of throttle rms that it comes to with the gains, where that is most; null without gains.',
        ),
    })
    .nullable()
    .describe('What is left of the noise that a recording has; null without one.'),
};

const proposalReading = z.object({
  ...reading,
  phaseMargin: z.number().nullable().describe('deg, the least of all axes at every operating point.'),
  gainMargin: z.number().nullable().describe('Times; null: not known, or no gain makes it swing.'),
});

const finding = z.object(found);

export const findForm = z.object({
  version,
  wish: z.object({
    packs: z.array(packName),
    holds: z
      .object({
        toneLeft: z.number().nullable().describe('dB'),
        phaseMargin: z.number().nullable().describe('deg'),
        gainMargin: z.number().nullable(),
        minutes: z.number().nullable(),
      })
      .describe('What must hold; null: not asked for.'),
    moves: z.array(z.enum(['filters', 'notches', 'gains', 'voltages'])),
  }),
  answer: z.string().describe('The whole of it in a sentence.'),
  measured: z
    .string()
    .nullable()
    .describe('Whether measured noise is weighed, and how far it is known, or why not.'),
  now: point.nullable(),
  nowReadings: z.array(proposalReading),
  unfiltered: z
    .object({
      point,
      readings: z.array(z.object(reading)),
      raised: z.array(finding).describe('Must-fix findings and risks that would come.'),
      isEnough: z.boolean().describe('Whether what is asked for would hold.'),
      text: z.string(),
    })
    .nullable()
    .describe('With every filter off that may be turned off; null where none may.'),
  tones: z
    .string()
    .nullable()
    .describe('Where the motors hum, where not enough is known to find values; null otherwise.'),
  moving: z.array(z.string()).describe('The settings that may move.'),
  front: z.array(point).describe('What there is between the ends, the least delay first.'),
  proposals: z
    .array(
      z.object({
        id: z.enum(['least-delay', 'middle', 'quietest']),
        title: z.string(),
        point,
        settings: z.array(
          z.object({
            path: z.string(),
            packs: z
              .array(z.string())
              .describe('For which it is written; empty: for all that read its line.'),
            before: z.string().nullable().describe('null where nothing is written.'),
            after: z.string(),
          }),
        ),
        readings: z.array(proposalReading),
        moved: z.array(moved).describe('Every figure that moves, for every pack.'),
        gained: z.array(finding),
        lost: z.array(finding),
      }),
    )
    .describe('From the least delay to the quietest; none where what is asked for can not be had.'),
  inTheWay: z.array(z.string()).describe('What stands in the way, a sentence each.'),
  heldBack: z.array(z.string()).describe('What was not moved as far as it might, and why.'),
  caution: z.string(),
});
