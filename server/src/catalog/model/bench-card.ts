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
  /** Words and not a figure: there is a whole line for it. */
  isWords: z.optional(z.literal(true)),
  /** Room for each member of a collection, as with steps. */
  each: z.optional(z.string()),
});

/** One step on the bench. Sentences take slots as those of data checks do. */
export const benchStep = z.strictObject({
  id: nameText,
  /** A stage of the job; `hover`: the last steps, the only ones with propellers on. */
  stage: z.union([stage, z.literal('hover')]),
  title: z.string().check(z.minLength(5)),
  /** The step once for each member of a collection, as with data checks. */
  each: z.optional(z.string()),
  /** Members that go without where this setting is set: it has a step of its own. */
  elsewhere: z.optional(z.record(nameText, z.string())),
  /** All must hold, or the craft does not need the step. */
  when: z.array(z.string()),
  /** And one of these, where there are any. */
  any: z.optional(z.array(z.string()).check(z.minLength(1))),
  /**
   * Settings that it speaks of in double brackets. Every whole craft needs the step, and one that is not set is asked
   * for: there is room to write it down. A part of a craft needs it where one of them is set.
   */
  asks: z.optional(z.array(z.string()).check(z.minLength(1))),
  /** What to do where there are several packs: the step is then done with each, and has room for each. */
  eachPack: z.optional(prose),
  do: prose,
  see: prose,
  expected: z.optional(z.array(expected)),
  readings: z.optional(z.array(reading)),
  source,
});

export const benchCardFile = z.strictObject({ steps: z.array(benchStep).check(z.minLength(1)) });

export type BenchStep = z.infer<typeof benchStep>;
