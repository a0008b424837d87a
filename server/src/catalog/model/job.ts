import * as z from './plain-zod';

/** A whole part of a craft, as completion writes it. */
const wholePart = z.strictObject({
  title: z.string().check(z.minLength(3), z.maxLength(40)),
  /** Whether a script that is begun for a pilot has it. */
  isInEach: z.optional(z.literal(true)),
  words: z.array(z.string()).check(z.describe('What people also call it.')),
  lines: z
    .array(z.string())
    .check(
      z.minLength(2),
      z.describe(
        'A header, then settings; {5 V}: a place with a good value; {}: a place with the best proposal, and no line where there is none.',
      ),
    ),
});

/** `schemas/job.json`: in which order a pilot sets a craft up, and the parts that it is made of. */
export const jobFile = z.strictObject({
  order: z
    .array(z.string())
    .check(z.minLength(1), z.describe('Sections in the order of the job; those below them come behind all.')),
  parts: z.array(wholePart),
});

export type WholePart = z.infer<typeof wholePart>;
