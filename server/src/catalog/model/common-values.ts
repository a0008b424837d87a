import { nameText, parameterName, source } from './common';
import * as z from './plain-zod';

/** A value that pilots write, and for what. */
const commonValue = z.strictObject({
  value: z.string().check(z.minLength(1), z.describe('As a script writes it: a quantity, a word, a list.')),
  why: z.string().check(z.minLength(3), z.maxLength(60), z.describe('For what it is good, in a few words.')),
  end: z
    .optional(z.literal(true))
    .check(z.describe('Says that it is common although it is an end of what is allowed or usual.')),
  purposes: z
    .optional(z.array(nameText))
    .check(z.describe('Words of craft.purpose for which it comes first.')),
  chemistries: z
    .optional(z.array(nameText))
    .check(z.describe('Only for packs of these chemistries, where the chemistry is known.')),
  members: z.optional(z.array(nameText)).check(z.describe('Only for these members of the collection.')),
});

/** Tables that know values of their own. */
const valueTable = z.enum([
  'chemistry-full',
  'chemistry-warn',
  'chemistry-land',
  'chemistry-storage',
  'gyro-rates',
  'loop-steps',
  'band-channels',
  'cells-borne',
  'log-medium',
  'cells-in-packs',
]);

/** What is commonly written for some parameters, or why nothing is. */
const commonRow = z.strictObject({
  of: z.array(parameterName).check(z.minLength(1)),
  values: z.optional(z.array(commonValue).check(z.minLength(1))),
  /** Has values that hang on the craft: they come before all others. */
  from: z.optional(valueTable),
  /** Whether each member has another one: what one has is not free for the next. */
  isOneEach: z.optional(z.literal(true)),
  none: z
    .optional(z.string().check(z.minLength(12)))
    .check(z.describe('Why no value is common, and where the pilot finds it.')),
  source: z.optional(source),
});

/** `schemas/common-values.json`: what completion proposes first. */
export const commonValueFile = z.strictObject({ common: z.array(commonRow).check(z.minLength(1)) });

export type CommonValue = z.infer<typeof commonValue>;
export type CommonRow = z.infer<typeof commonRow>;
export type ValueTable = z.infer<typeof valueTable>;
