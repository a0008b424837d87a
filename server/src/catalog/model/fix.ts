import * as z from './plain-zod';

/** One line that a fix writes. The value may hold slots, as sentences do. */
const writtenLine = {
  set: z.string().check(z.describe('The setting that is written: its line changes, or a new one is made.')),
  to: z
    .string()
    .check(
      z.minLength(1),
      z.describe(
        'The new value as a script writes it; {a.name} and {2 * a.name in Hz} put values in, {free channel} and {free port} what nothing uses yet.',
      ),
    ),
  look: z
    .optional(z.string().check(z.minLength(5)))
    .check(
      z.describe(
        'What the pilot must look at or choose: the value is a place to type over, and a comment says so.',
      ),
    ),
};

const common = {
  title: z.string().check(z.minLength(3), z.describe('What pressing it does: a few words with the value.')),
  when: z
    .optional(z.array(z.string().check(z.minLength(3))))
    .check(z.describe('Conditions as those of a rule: it is offered only where all of them hold.')),
};

/** What may be done about a finding. One of which a value is not known is not offered. */
export const checkFix = z.union([
  z.strictObject({
    ...common,
    ...writtenLine,
    also: z
      .optional(z.array(z.strictObject(writtenLine)))
      .check(z.describe('More lines that are written with it.')),
    forPack: z
      .optional(z.literal(true))
      .check(z.describe('Written for the pack in view alone, where the craft has several.')),
  }),
  z.strictObject({
    ...common,
    remove: z
      .array(z.string())
      .check(
        z.minLength(1),
        z.describe('Settings whose lines are taken out; those without a line are not missed.'),
      ),
  }),
]);

export const checkFixes = z
  .optional(z.array(checkFix))
  .check(z.describe('What may be done about it, best first. Nothing here may bring another must-fix.'));

export type CheckFix = z.infer<typeof checkFix>;
