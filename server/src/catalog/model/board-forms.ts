import * as z from './plain-zod';

/** A text that can stand in one line: no control characters but the tab, no line ends, no marks that turn text around. */
const lineText = z
  .string()
  .check(
    z.regex(/^(?:\t|[^\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF])*$/u),
    z.maxLength(200),
  );

const mark = lineText.check(z.minLength(1), z.maxLength(60));

const template = lineText.check(z.minLength(1));

const fields =
  '{name}, {value}, {group}, {member}, {index}, and what the board says beside a value: {unit}, {range}, {low}, {high}, {words}, {default}, {remark}';

/** One form of a settings line. */
const lineForm = z.strictObject({
  form: template.check(
    z.describe(
      `Literals with the fields ${fields}. A blank in it stands for any number of blanks. Without {value}, the name alone says that something is on, or what stands before it does.`,
    ),
  ),
  names: z
    .optional(z.enum(['word', 'words', 'before-value']))
    .check(
      z.describe(
        'Where only blanks part the name from its value. word: the name is one word. words: the value is the last word. before-value: the name ends before the first word that looks like a value.',
      ),
    ),
  between: z
    .optional(mark)
    .check(z.describe('What parts the settings where a line holds several; a blank stands for blanks.')),
  negation: z
    .optional(mark)
    .check(
      z.describe(
        'For names that stand alone: what stands before one that is off, in the place of what the form has before the name.',
      ),
    ),
});

const column = z.enum([
  'group',
  'member',
  'index',
  'name',
  'value',
  'unit',
  'range',
  'low',
  'high',
  'words',
  'default',
  'remark',
  'other',
]);

/** How a board's listing is written: found from a listing, kept in a profile. Data alone; no patterns. */
export const boardForms = z.strictObject({
  container: z
    .enum(['lines', 'json', 'yaml', 'xml', 'table'])
    .check(z.describe('What holds the settings: lines of forms, or a document of a known kind.')),
  lines: z
    ._default(z.array(lineForm).check(z.maxLength(32)), [])
    .check(z.describe('The forms of settings lines; of those that fit a line, the first reads it.')),
  beside: z
    ._default(z.array(template).check(z.maxLength(32)), [])
    .check(z.describe('What may stand behind a value, such as " [{range}]" or " # {remark}".')),
  saysBetween: z
    .optional(z.boolean())
    .check(
      z.describe('Whether brackets between a name and its value say something of it, as in "rate [Hz] = 4".'),
    ),
  headings: z
    ._default(z.array(template).check(z.maxLength(16)), [])
    .check(z.describe('Lines with the field {group}, for the settings below them.')),
  closers: z
    ._default(z.array(mark).check(z.maxLength(16)), [])
    .check(z.describe('Lines that end the innermost group; where there are some, groups lie in each other.')),
  blocks: z
    .optional(
      z.strictObject({
        open: z.enum(['{', '(']).check(z.describe('What stands behind the name of a group that it opens.')),
        close: z.enum(['}', ')']),
        between: z.optional(z.enum([';', ','])).check(z.describe('What parts settings within a line.')),
      }),
    )
    .check(z.describe('For groups that open or close in lines that hold settings as well.')),
  indent: z
    ._default(z.enum(['none', 'groups', 'continues']), 'none')
    .check(
      z.describe(
        'What it means that a line is indented further. groups: it belongs to the line above. continues: it goes on with its value.',
      ),
    ),
  path: z
    .optional(mark)
    .check(z.describe('What parts the groups in front of a name from it: "/" in "gyro/rate".')),
  continued: z.optional(mark).check(z.describe('What a line ends with whose value goes on in the next one.')),
  comments: z
    ._default(z.array(mark).check(z.maxLength(8)), [])
    .check(z.describe('What lines begin with that the board does not read.')),
  opening: z
    ._default(z.array(template).check(z.maxLength(8)), [])
    .check(
      z.describe('Lines before the settings; {board} is the name, {count} how many settings there are.'),
    ),
  closing: z
    ._default(z.array(template).check(z.maxLength(8)), [])
    .check(z.describe('Lines after them, with the same fields.')),
  prompts: z
    ._default(z.array(mark).check(z.maxLength(8)), [])
    .check(z.describe('What the board prints before it takes a command.')),
  table: z
    .optional(
      z.strictObject({
        delimiter: z
          .enum([',', ';', '\t', '|', ' '])
          .check(z.describe('What parts the cells; a blank stands for two blanks or more.')),
        heading: z.boolean().check(z.describe('Whether the first row names the columns.')),
        columns: z.array(column).check(z.minLength(2), z.maxLength(64)),
        names: z
          .optional(z.array(mark).check(z.minLength(3), z.maxLength(64)))
          .check(
            z.describe(
              'For rows with several values: what each column is called. Each value is a setting of that name, in the group of its row.',
            ),
          ),
      }),
    )
    .check(z.describe('For tables: what the columns hold.')),
  decimal: z._default(z.enum(['.', ',']), '.').check(z.describe('What stands before decimals.')),
});

export type Forms = z.infer<typeof boardForms>;
