import * as z from 'zod';
import { found, packName, version } from './common';
import { moved } from './compare';

const point = z
  .object({
    delay: z.number().describe('ms that the filters delay.'),
    noise: z.number().describe('% of throttle that comes of a tremble of 1 deg/s at the motors’ tone.'),
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
