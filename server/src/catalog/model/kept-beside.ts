import * as z from './plain-zod';

const notInOneLine = /[\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/u;
const checkId = /^[a-z]+(-[a-z]+)*\/[a-z]+(-[a-z]+)*$/;

/** A risk of a setting that the pilot accepts. */
const accepted = z.strictObject({
  setting: z
    .array(z.string().check(z.maxLength(2000)))
    .check(z.minLength(1), z.maxLength(65), z.describe('The groups of the setting, then its name.')),
  occurrence: z
    .optional(z.int().check(z.gte(2)))
    .check(z.describe('Which of those that are called so; left out for the first.')),
  value: z
    .optional(z.int().check(z.gte(1)))
    .check(z.describe('Which of several values that stand in the setting.')),
  check: z.string().check(
    z.refine((text) => checkId.test(text), { error: 'check is an id such as line/outside-usual' }),
    z.describe('The id of the check that raises the risk.'),
  ),
  reason: z.string().check(
    z.maxLength(1000),
    // It becomes part of a line of a script.
    z.refine((text) => !notInOneLine.test(text), { error: 'reason is plain text of one line' }),
    z.describe('Why it is fine here.'),
  ),
});

/** What is kept beside a board's text, as `<file>.board.json`: which board it is of, and which of its risks are accepted. */
export const keptBeside = z.strictObject({
  version: z.literal(1),
  board: z
    .optional(z.string().check(z.maxLength(100)))
    .check(
      z.describe('The board whose text it is; without it, that is found from its name and what it says.'),
    ),
  accepted: z
    .optional(z.array(accepted).check(z.maxLength(10_000)))
    .check(z.describe('Risks that the pilot accepts.')),
});
