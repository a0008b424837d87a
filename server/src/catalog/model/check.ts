import { z } from 'zod';
import { source } from './common';

export const level = z.enum(['must-fix', 'risk', 'note', 'tidy']);

/** `group/what-is-wrong` */
const checkId = z.string().regex(/^[a-z]+(-[a-z]+)*\/[a-z]+(-[a-z]+)*$/);

const told = {
  id: checkId,
  level,
  /** A few words: what is looked at. */
  title: z.string().min(5),
  /** One sentence that says what is wrong with the numbers in it; `{name}` puts a value in. */
  message: z.string().min(10),
  /** One sentence that says what to do; `{name}` puts a value in. */
  advice: z.string().min(10),
  source,
};

/** The words of a rule whose algorithm is code, or of a line check. */
const codeCheck = z.strictObject({ ...told, by: z.literal('code') });

/**
 * A rule that an expression can say. Conditions stand in the script's own expression language with a
 * comparison: `power.warn-cell <= power.land-cell`, `receiver.link is crsf`, `arming.tilt-limit is set`.
 * Every condition must hold. In a collection rule `<name>` stands for the member in turn.
 */
export const dataCheck = z.strictObject({
  ...told,
  by: z.literal('data'),
  /** `craft`: once. `pack`: once for each pack in view. */
  scope: z.enum(['craft', 'pack']),
  /** The collection whose members are taken in turn: `switch`, `overlay`, `gyro.notch`. */
  each: z.string().optional(),
  /** Only for a whole craft, that is a script that sets something under `craft`. For rules about what is missing. */
  whole: z.boolean().optional(),
  when: z.array(z.string().min(3)).min(1),
  /** The parameter that the finding stands at. */
  at: z.string(),
  related: z.array(z.strictObject({ at: z.string(), message: z.string().min(3) })).optional(),
  fixes: z
    .array(
      z.strictObject({
        title: z.string().min(3),
        set: z.string(),
        /** The new value: an expression, a word, or a text with `{…}` for computed parts. */
        to: z.string(),
      }),
    )
    .optional(),
});

export const check = z.discriminatedUnion('by', [codeCheck, dataCheck]);
export const checkFile = z.strictObject({ group: z.string(), checks: z.array(check).min(1) });

export type Level = z.infer<typeof level>;
export type Check = z.infer<typeof check>;
export type DataCheck = z.infer<typeof dataCheck>;
