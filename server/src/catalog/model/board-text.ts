import { parameterName, quantityText } from './common';
import { addedParameter } from './parameter';
import * as z from './plain-zod';

/** A text that can stand in one line: no control characters, no line ends, no marks that turn text around. */
const lineText = z
  .string()
  .check(z.regex(/^[^\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]*$/u), z.maxLength(200));

const spelling = lineText.check(z.minLength(1), z.maxLength(60));

/** How one board writes its settings down. Templates are literals and fields in braces; see `board/template.ts`. */
export const boardText = z.strictObject({
  line: lineText.check(
    z.minLength(1),
    z.describe(
      'One settings line: literals with the fields {name} and {value}, and where the board writes them {group} and {index}. Blanks in it stand for any number of blanks.',
    ),
  ),
  heading: z
    .optional(lineText.check(z.minLength(1)))
    .check(z.describe('A line with the field {group}, where the group stands above its settings.')),
  comment: spelling.check(
    z.maxLength(8),
    z.describe('What a line begins with that the board does not read.'),
  ),
  remarks: z
    ._default(z.array(spelling).check(z.maxLength(8)), [])
    .check(
      z.describe(
        'What ends a value when more stands behind it, such as " #" or " [": from there on the board says something about the setting.',
      ),
    ),
  opening: z
    ._default(z.array(lineText).check(z.maxLength(8)), [])
    .check(z.describe('Lines before the settings; {board} is the name.')),
  closing: z
    ._default(z.array(lineText).check(z.maxLength(8)), [])
    .check(z.describe('Lines after them; {count} is how many settings lines there are.')),
  lineEnd: z._default(z.enum(['lf', 'crlf']), 'lf'),
  longestLine: z._default(z.int().check(z.gte(16), z.lte(1000)), 200),
  /** How fast the board takes lines that are pasted. */
  pace: z
    .optional(z.strictObject({ lines: z.int().check(z.positive()), pause: quantityText }))
    .check(z.describe('So many lines may be pasted at once, then a pause.')),
  flags: z._default(z.strictObject({ on: spelling, off: spelling }), { on: 'on', off: 'off' }),
  decimal: z._default(z.enum(['.', ',']), '.'),
  list: z
    ._default(z.strictObject({ between: spelling, none: spelling }), { between: ',', none: '-' })
    .check(z.describe('How a list of words is written, and an empty one.')),
  quote: z._default(z.enum(['', '"', "'"]), '').check(z.describe('Around texts.')),
});

const counted = {
  unit: z
    .optional(z.string())
    .check(z.describe('The unit that the board counts in; without it, the parameter’s own.')),
  scale: z
    .optional(z.number().check(z.refine((value) => value !== 0)))
    .check(z.describe('What the value in that unit is multiplied by: 10 for tenths.')),
  offset: z.optional(z.number()).check(z.describe('What is added after that.')),
  step: z
    .optional(quantityText)
    .check(z.describe('How finely the board keeps it, as a script would write it; 1 for counts.')),
  limits: z
    .optional(z.tuple([quantityText, quantityText]))
    .check(z.describe('The least and the most that the board takes.')),
};

/** One parameter of the catalogue in the board's own words. */
export const boardSetting = z.strictObject({
  parameter: parameterName,
  names: z
    .array(spelling)
    .check(
      z.minLength(1),
      z.maxLength(64),
      z.describe('The board’s own name or names for it; {member} is the member of a collection.'),
    ),
  by: z
    ._default(z.enum(['value', 'ends', 'samples', 'each', 'place', 'cell']), 'value')
    .check(
      z.describe(
        'value: one name holds it. ends: two hold the ends of a range. samples: each holds a curve at one of the points in "at". each: each holds one entry of a list. place: two hold row and column. cell: one holds row × columns + column.',
      ),
    ),
  at: z
    .optional(z.array(quantityText).check(z.minLength(2), z.maxLength(64)))
    .check(z.describe('For samples: the points across, rising.')),
  columns: z
    .optional(z.int().check(z.positive()))
    .check(z.describe('For cell: how many columns the grid has.')),
  ...counted,
  words: z
    .optional(z.record(z.string(), spelling))
    .check(z.describe('The board’s spelling of words and flags.')),
  members: z
    .optional(z.record(z.string(), spelling))
    .check(
      z.describe('The members that the board knows, with its spelling; without it, any under its own name.'),
    ),
});

/** Settings that the board keeps together, in its order. */
const boardGroup = z.strictObject({
  group: spelling,
  settings: z.array(boardSetting).check(z.minLength(1)),
});

/** The text half of a board profile. */
export const boardTextHalf = {
  text: z
    .optional(boardText)
    .check(z.describe('How the board writes its settings; without it nothing can be handed over.')),
  names: z
    ._default(z.array(boardGroup), [])
    .check(z.describe('The catalogue’s parameters in the board’s own words.')),
  own: z
    ._default(z.array(addedParameter), [])
    .check(
      z.describe('Settings that only this board has: board-own.<name>, each with its own row under names.'),
    ),
};

export type BoardText = z.infer<typeof boardText>;
export type BoardSetting = z.infer<typeof boardSetting>;
