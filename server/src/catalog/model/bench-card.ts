import { nameText, prose, source, stage } from './common';
import * as z from './plain-zod';

/** Something whose value the step should show: a parameter, or `figure.<id>`. */
const expected = z.strictObject({ words: z.string().check(z.minLength(3)), is: z.string() });

/** Room for a figure that is read off. */
const reading = z.strictObject({
  words: z.string().check(z.minLength(3)),
  /** Empty for a count or for words. */
  unit: z.string(),
  /** The setting of a flight that keeps it: `rest-cell`. */
  setting: z.optional(nameText),
});

/** One step on the bench. Sentences take slots as those of data checks do. */
export const benchStep = z.strictObject({
  id: nameText,
  /** A stage of the job; `hover`: the last steps, the only ones with propellers on. */
  stage: z.union([stage, z.literal('hover')]),
  title: z.string().check(z.minLength(5)),
  /** The step once for each member of a collection, as with data checks. */
  each: z.optional(z.string()),
  /** All must hold, or the craft does not need the step. */
  when: z.array(z.string()),
  do: prose,
  see: prose,
  expected: z.optional(z.array(expected)),
  readings: z.optional(z.array(reading)),
  source,
});

export const benchCardFile = z.strictObject({ steps: z.array(benchStep).check(z.minLength(1)) });

export type BenchStep = z.infer<typeof benchStep>;
