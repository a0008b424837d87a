import { nameText, prose, source, stage } from './common';
import * as z from './plain-zod';

/** Something whose value the step should show: a parameter, or `figure.<id>`. */
const expected = z.strictObject({ words: z.string().min(3), is: z.string() });

/** Room for a figure that is read off. */
const reading = z.strictObject({
  words: z.string().min(3),
  /** Empty for a count or for words. */
  unit: z.string(),
  /** The setting of a flight that keeps it: `rest-cell`. */
  setting: nameText.optional(),
});

/** One step on the bench. Sentences take slots as those of data checks do. */
export const benchStep = z.strictObject({
  id: nameText,
  /** A stage of the job; `hover`: the last steps, the only ones with propellers on. */
  stage: z.union([stage, z.literal('hover')]),
  title: z.string().min(5),
  /** The step once for each member of a collection, as with data checks. */
  each: z.string().optional(),
  /** All must hold, or the craft does not need the step. */
  when: z.array(z.string()),
  do: prose,
  see: prose,
  expected: z.array(expected).optional(),
  readings: z.array(reading).optional(),
  source,
});

export const benchCardFile = z.strictObject({ steps: z.array(benchStep).min(1) });

export type BenchStep = z.infer<typeof benchStep>;
