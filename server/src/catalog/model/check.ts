import { prose, source } from './common';
import { checkFixes } from './fix';
import * as z from './plain-zod';

export const level = z.enum(['must-fix', 'risk', 'note', 'tidy']);

/** `group/what-is-wrong` */
const checkId = z.string().check(z.regex(/^[a-z]+(-[a-z]+)*\/[a-z]+(-[a-z]+)*$/));

const described = {
  id: checkId.check(z.describe('A group and what is wrong: buzzer/shrill.')),
  level: level.check(
    z.describe('must-fix: endangers or will be refused. risk: can hurt. note: worth knowing. tidy: style.'),
  ),
  title: z.string().check(z.minLength(5), z.describe('A few words: what is looked at.')),
  message: z
    .string()
    .check(
      z.minLength(10),
      z.describe('One sentence that says what is wrong with the numbers in it; {a.name} puts a value in.'),
    ),
  advice: z
    .string()
    .check(z.minLength(10), z.describe('One sentence that says what to do; {a.name} puts a value in.')),
  fixes: checkFixes,
  doesNothing: z
    .optional(z.boolean())
    .check(z.describe('Whether the line that it marks does nothing as the craft stands: editors grey it.')),
  source,
};

/** The words of a rule whose algorithm is code, or of a line check. */
const codeCheck = z.strictObject({
  ...described,
  /** The formula or the rule that the algorithm follows, by the names of the settings. Line checks need none. */
  rule: z.optional(prose),
  by: z.literal('code'),
});

/**
 * A rule that an expression can say. Conditions stand in the script's own expression language with a
 * comparison: `power.warn-cell <= power.land-cell`, `receiver.link is crsf`, `arming.tilt-limit is set`.
 * Every condition must hold. In a collection rule `<name>` stands for the member in turn.
 */
export const dataCheck = z.strictObject({
  ...described,
  by: z.literal('data'),
  scope: z.enum(['craft', 'pack']).check(z.describe('Looked at once for the craft, or once for each pack.')),
  each: z
    .optional(z.string())
    .check(z.describe('The collection whose members are taken in turn: pack, switch, overlay, gyro.filter.')),
  whole: z
    .optional(z.boolean())
    .check(
      z.describe('Only where the script sets something under "craft": for rules about what is missing.'),
    ),
  when: z
    .array(z.string().check(z.minLength(3)))
    .check(
      z.minLength(1),
      z.describe(
        'Conditions that must all hold: "power.warn-cell <= power.land-cell", "receiver.link is crsf", "arming.needs has gyro-still", "motor.poles is missing".',
      ),
    ),
  at: z.string().check(z.describe('The setting at whose line the finding stands.')),
  related: z.optional(z.array(z.strictObject({ at: z.string(), message: z.string().check(z.minLength(3)) }))),
});

export const check = z.discriminatedUnion('by', [codeCheck, dataCheck]);
export const checkFile = z.strictObject({ group: z.string(), checks: z.array(check).check(z.minLength(1)) });

export type Level = z.infer<typeof level>;
export type Check = z.infer<typeof check>;
export type DataCheck = z.infer<typeof dataCheck>;
