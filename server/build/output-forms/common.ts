import * as z from 'zod';
import { level } from '../../src/catalog/model/check';

export const version = z.literal(1).describe('Goes up when something changes its meaning or goes away.');

const position = z.object({
  line: z.int().min(0).describe('Counted from 0.'),
  character: z.int().min(0).describe('Counted from 0 in UTF-16 units.'),
});

export const range = z.object({
  start: position,
  end: position.describe('The place behind the last character.'),
});

export const target = z
  .object({ uri: z.string(), line: z.int().min(0), character: z.int().min(0) })
  .nullable()
  .describe('The line of a script that it comes from, counted from 0; null where no line sets it.');

export const counts = z
  .object({ 'must-fix': z.int(), risk: z.int(), note: z.int(), tidy: z.int() })
  .describe('How much was found at each level.');

export const readAs = z
  .enum(['whole', 'part', 'incomplete', 'empty'])
  .describe(
    'What the script was taken for: a whole craft; a part that others include; one that lacks what it includes; one that says nothing. Only a whole craft is held to all that a craft needs.',
  );
export const unchecked = z
  .string()
  .nullable()
  .describe('What was not checked, in a sentence, since the script is no whole craft; null for a whole one.');

export const found = {
  id: z.string().describe('The check: wire/port-shared.'),
  level: level.check(z.describe('note for a risk that the script accepts.')),
  message: z.string().describe('What is wrong, in a sentence.'),
  advice: z.string().describe('What to do about it.'),
};

export const accepted = z.string().nullable().describe('Why the script accepts it; null where it does not.');
export const packName = z
  .string()
  .nullable()
  .describe('The pack that it holds for; null: for all, or packs play no part.');
export const span = z
  .string()
  .nullable()
  .describe('From the low to the high end, as it is shown; null where they are the same.');

export const withheld = z
  .array(
    z.object({
      id: z.string(),
      title: z.string(),
      packs: z
        .array(z.string())
        .nullable()
        .describe('With which packs it is not known; null: with all, or the craft has none.'),
      needs: z
        .array(z.string())
        .describe(
          'Settings that would make it appear: motor.resistance, pack.sprint.mass. Empty where none is missing.',
        ),
      instead: z
        .array(
          z.object({
            of: z.array(z.string()),
            write: z.array(z.string()),
            words: z.string().optional().describe('What they are called together, where they are many.'),
            detail: z.string().optional().describe('What stands behind the words in a sentence.'),
          }),
        )
        .describe('What may be written in place of some of them; each is a way by itself.'),
      reason: z.string().describe('Why it is withheld, in a sentence.'),
    }),
  )
  .describe('Figures that can’t be computed for this craft.');

export const measuredSpan = z
  .object({
    likely: z.number(),
    low: z.number().describe('The truth lies between low and high nine times in ten.'),
    high: z.number(),
    unit: z.string().describe('As a script writes it.'),
  })
  .describe('What was measured.');

/** What is told with what it rests on, or withheld with the reason. */
export function measured<T extends z.ZodType>(form: T) {
  return z.union([
    z.object({ told: form, basis: z.string().describe('What it rests on.') }),
    z.object({
      told: z.null(),
      reason: z.string().describe('Why nothing is told.'),
      advice: z.string().describe('What to log or to fly for it.'),
    }),
  ]);
}

export const axisRow = z
  .object({
    question: z.enum(['follow', 'late', 'gains']),
    name: z.string(),
    better: z.enum(['less', 'more']).nullable().describe('Which way is better; null: neither is.'),
    cells: z.array(
      z.object({
        axis: z.enum(['roll', 'pitch', 'yaw']),
        value: measured(measuredSpan).nullable().describe('null where it is no number.'),
        beside: z.string().nullable().describe('What the script says of it, in words.'),
        estimate: z
          .object({
            inHover: z.number().nullable(),
            figure: measuredSpan
              .nullable()
              .describe('Of the build sheet, where it comes nearest to swinging; null where it has none.'),
            unit: z.string(),
          })
          .nullable()
          .describe('What the script lets expect; null for a gain, which it sets, or where it says nothing.'),
      }),
    ),
  })
  .describe('A quantity of the axes, measured and beside it what the script lets expect.');
