import { parameterName, quantityText } from './common';
import { addedParameter } from './parameter';
import * as z from './plain-zod';

/** A text that can stand in one line: no control characters, no line ends, no marks that turn text around. */
const lineText = z
  .string()
  .regex(/^[^\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]*$/u)
  .max(200);

const spelling = lineText.min(1).max(60);

/** How one board writes its settings down. Templates are literals and fields in braces; see `board/template.ts`. */
export const boardText = z.strictObject({
  line: lineText
    .min(1)
    .describe(
      'One settings line: literals with the fields {name} and {value}, and where the board writes them {group} and {index}. Blanks in it stand for any number of blanks.',
    ),
  heading: lineText
    .min(1)
    .optional()
    .describe('A line with the field {group}, where the group stands above its settings.'),
  comment: spelling.max(8).describe('What a line begins with that the board does not read.'),
  remarks: z
    .array(spelling)
    .max(8)
    .default([])
    .describe(
      'What ends a value when more stands behind it, such as " #" or " [": from there on the board says something about the setting.',
    ),
  opening: z.array(lineText).max(8).default([]).describe('Lines before the settings; {board} is the name.'),
  closing: z
    .array(lineText)
    .max(8)
    .default([])
    .describe('Lines after them; {count} is how many settings lines there are.'),
  lineEnd: z.enum(['lf', 'crlf']).default('lf'),
  longestLine: z.number().int().min(16).max(1000).default(200),
  /** How fast the board takes lines that are pasted. */
  pace: z
    .strictObject({ lines: z.number().int().positive(), pause: quantityText })
    .optional()
    .describe('So many lines may be pasted at once, then a pause.'),
  flags: z.strictObject({ on: spelling, off: spelling }).default({ on: 'on', off: 'off' }),
  decimal: z.enum(['.', ',']).default('.'),
  list: z
    .strictObject({ between: spelling, none: spelling })
    .default({ between: ',', none: '-' })
    .describe('How a list of words is written, and an empty one.'),
  quote: z.enum(['', '"', "'"]).default('').describe('Around texts.'),
});

const counted = {
  unit: z.string().optional().describe('The unit that the board counts in; without it, the parameter’s own.'),
  scale: z
    .number()
    .refine((value) => value !== 0)
    .optional()
    .describe('What the value in that unit is multiplied by: 10 for tenths.'),
  offset: z.number().optional().describe('What is added after that.'),
  step: quantityText
    .optional()
    .describe('How finely the board keeps it, as a script would write it; 1 for counts.'),
  limits: z
    .tuple([quantityText, quantityText])
    .optional()
    .describe('The least and the most that the board takes.'),
};

/** One parameter of the catalogue in the board's own words. */
export const boardSetting = z.strictObject({
  parameter: parameterName,
  names: z
    .array(spelling)
    .min(1)
    .max(64)
    .describe('The board’s own name or names for it; {member} is the member of a collection.'),
  by: z
    .enum(['value', 'ends', 'samples', 'each', 'place', 'cell'])
    .default('value')
    .describe(
      'value: one name holds it. ends: two hold the ends of a range. samples: each holds a curve at one of the points in "at". each: each holds one entry of a list. place: two hold row and column. cell: one holds row × columns + column.',
    ),
  at: z.array(quantityText).min(2).max(64).optional().describe('For samples: the points across, rising.'),
  columns: z.number().int().positive().optional().describe('For cell: how many columns the grid has.'),
  ...counted,
  words: z.record(z.string(), spelling).optional().describe('The board’s spelling of words and flags.'),
  members: z
    .record(z.string(), spelling)
    .optional()
    .describe('The members that the board knows, with its spelling; without it, any under its own name.'),
});

/** Settings that the board keeps together, in its order. */
const boardGroup = z.strictObject({
  group: spelling,
  settings: z.array(boardSetting).min(1),
});

/** The text half of a board profile. */
export const boardTextHalf = {
  text: boardText
    .optional()
    .describe('How the board writes its settings; without it nothing can be handed over.'),
  names: z.array(boardGroup).default([]).describe('The catalogue’s parameters in the board’s own words.'),
  own: z
    .array(addedParameter)
    .default([])
    .describe('Settings that only this board has: own.<name>, each with its own row under names.'),
};

export type BoardText = z.infer<typeof boardText>;
export type BoardSetting = z.infer<typeof boardSetting>;
