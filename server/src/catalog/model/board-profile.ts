import { boardForms } from './board-forms';
import { hardware } from './board-hardware';
import { nameText, prose, quantityText, source } from './common';
import * as z from './plain-zod';

/** A text that can stand in one line: no control characters but tabs, no line ends, no marks that turn text around. */
const lineText = z
  .string()
  .check(
    z.regex(/^(?:\t|[^\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF])*$/u),
    z.maxLength(400),
  );

const spelling = lineText.check(z.minLength(1), z.maxLength(200));

/** A step of a path, or the open part of a collection: `switch.arm.on`, `switch.<function>.on`. */
const meaning = z.string().check(z.regex(/^[a-z][a-z-]*(\.([a-z0-9][a-z0-9-]*|<[a-z]+>))+$/));

/** How the board writes its settings down, and how it takes them. */
export const boardText = z.strictObject({
  forms: boardForms,
  command: z
    .optional(z.union([z.literal('same'), spelling, z.array(spelling).check(z.minLength(1), z.maxLength(8))]))
    .check(
      z.describe(
        'How one setting is told to the board: "same" as its listing, or lines with the fields of the listing. Left out: not known yet.',
      ),
    ),
  commandPath: z
    .optional(spelling.check(z.maxLength(60)))
    .check(
      z.describe('What parts groups that lie in each other, in a command; without it, as in the listing.'),
    ),
  longestLine: z.optional(z.int().check(z.gte(16), z.lte(10_000))),
  lineEnd: z.optional(z.enum(['lf', 'crlf'])),
  pace: z
    .optional(z.strictObject({ lines: z.int().check(z.positive()), pause: quantityText }))
    .check(z.describe('So many lines may be pasted at once, then a pause.')),
  omitsDefaults: z
    .optional(z.literal(true))
    .check(z.describe('Its listing shows only what differs from the defaults.')),
  flags: z
    .optional(z.strictObject({ on: spelling, off: spelling }))
    .check(z.describe('How it writes on and off.')),
  list: z
    .optional(z.strictObject({ between: spelling, none: spelling }))
    .check(z.describe('How it writes a list of words, and an empty one.')),
  quote: z.optional(z.enum(['"', "'"])).check(z.describe('What it writes around texts.')),
});

/** Which part of its parameter a setting holds, where that takes several. */
const partHeld = z.union([
  z.enum(['low', 'high', 'row', 'column']),
  z.strictObject({ cell: z.int().check(z.positive()) }),
  z.strictObject({ at: quantityText }),
  z.strictObject({ entry: z.int().check(z.positive(), z.lte(64)) }),
  z.strictObject({ numberOf: nameText }),
  z.strictObject({ has: nameText }),
]);

const counts = z.strictObject({
  unit: z
    .optional(z.string())
    .check(
      z.describe(
        'The unit that the board counts in; without it, the parameter’s own. A rate may be counted by its period, in us, and a time by how often it comes, in Hz.',
      ),
    ),
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
  base: z
    .optional(z.union([z.literal(2), z.literal(8), z.literal(16)]))
    .check(z.describe('The base in which it writes the number; without it, ten.')),
  behind: z
    .optional(spelling)
    .check(z.describe('What it writes behind the number: its unit, with the blank before it.')),
  table: z
    .optional(z.record(spelling, quantityText))
    .check(
      z.describe(
        'Where the board counts steps: what each stands for, such as {"1": "25 mW", "2": "100 mW"}.',
      ),
    ),
});

/** What a value of the board means. */
const meant = z.strictObject({
  means: z
    .optional(meaning)
    .check(
      z.describe('The parameter of a craft script that it is; without it, nobody has said what it means.'),
    ),
  as: z
    .optional(partHeld)
    .check(
      z.describe(
        'The part of the parameter that it holds: an end of a range, the row, the column or the {"cell"} of a place in a grid of so many columns, a curve {"at"} a point across, one {"entry"} of a list, the {"numberOf"} a word in a list, from 1, whether a list {"has"} a word.',
      ),
    ),
  counts: z.optional(counts).check(z.describe('How its number becomes the parameter’s quantity.')),
  spelled: z
    .optional(z.record(z.string(), spelling))
    .check(z.describe('The board’s spelling of the parameter’s words, or of on and off.')),
  role: z
    .optional(meaning)
    .check(z.describe('The parameter that it plays the part of, where nobody knows how it is counted.')),
});

/** Digits of a number of which something can be said: as many as a setting may have values. */
export const mostBits = 32;

/** What a row says of its meaning, and nothing else. */
export const rowMeaning = z.strictObject({
  ...meant.shape,
  items: z
    .optional(z.array(meant).check(z.minLength(1), z.maxLength(64)))
    .check(
      z.describe(
        'Where several values stand in it: what each of them means, in their order; {} where nobody has said.',
      ),
    ),
  between: z
    .optional(spelling)
    .check(z.describe('What stands between the values of "items"; without it, a blank.')),
  packed: z
    .optional(z.literal(true))
    .check(
      z.describe(
        'Its "items" are the binary digits of one number, the lowest first: each is 1 or 0, for on or off.',
      ),
    ),
  port: z.optional(nameText).check(z.describe('The port whose role it says, in a word of "portRoles".')),
});

/** One setting of the board. What its listing says stands in the board's own words and numbers. */
export const boardSetting = z.strictObject({
  group: z
    .optional(z.union([spelling, z.array(spelling).check(z.minLength(1), z.maxLength(64))]))
    .check(z.describe('The group that it stands in; several where groups lie within groups.')),
  name: spelling.check(
    z.describe('Its name as the board writes it; {member} stands for a member of a collection.'),
  ),
  occurrence: z
    .optional(z.int().check(z.positive()))
    .check(z.describe('Which one, where several of a group have this name; without it, all of them.')),
  range: z
    .optional(z.tuple([spelling, spelling]))
    .check(z.describe('The least and the most that the listing states.')),
  words: z
    .optional(z.array(spelling).check(z.minLength(1), z.maxLength(1000)))
    .check(z.describe('The words that the listing states.')),
  default: z.optional(lineText).check(z.describe('What the listing states as its default.')),
  unit: z.optional(spelling).check(z.describe('The unit that the listing states.')),
  remark: z.optional(lineText).check(z.describe('What else the listing says of it.')),
  ...rowMeaning.shape,
});

/** What a person says of how a setting holds a parameter. */
export const sayingModel = z.strictObject({
  means: meaning,
  isRole: z.optional(z.boolean()),
  parts: z.optional(z.array(partHeld).check(z.maxLength(64))),
  item: z.optional(z.int().check(z.positive(), z.lte(64))),
  bit: z.optional(z.int().check(z.gte(0), z.lte(mostBits - 1))),
  bits: z.optional(z.record(z.string(), z.int().check(z.gte(0), z.lte(mostBits - 1)))),
  counted: z.optional(z.pick(counts, { unit: true, scale: true, offset: true, table: true })),
  spelled: z.optional(z.record(z.string(), spelling)),
});

/** What the board calls the roles of its ports, where it has a setting for each port. */
export const portRoles = z.strictObject({
  roles: z
    .record(meaning, spelling)
    .check(
      z.describe(
        'By the parameter that names a port, such as receiver.port: the board’s word for that role.',
      ),
    ),
  unused: z.optional(spelling).check(z.describe('Its word for a port without a role.')),
});

/** A board profile: what the board has, how it writes its settings, and what they mean. */
export const boardProfile = z.strictObject({
  name: nameText,
  title: z.optional(z.string().check(z.minLength(1), z.maxLength(60))),
  summary: z.optional(prose),
  source: z.optional(source),
  hardware: z
    .optional(hardware)
    .check(z.describe('What the board has; a part that is left out is not known, and what needs it waits.')),
  text: z
    .optional(boardText)
    .check(z.describe('How it writes its settings; without it nothing can be handed over.')),
  members: z
    .optional(z.record(z.string(), z.record(z.string(), spelling)))
    .check(
      z.describe(
        'By collection, the members that the board knows, with its spelling; without it, any under its own name.',
      ),
    ),
  portRoles: z
    .optional(portRoles)
    .check(z.describe('What it calls the roles of its ports, for settings with a "port".')),
  settings: z._default(z.array(boardSetting).check(z.maxLength(100_000)), []),
});

export type BoardProfile = z.infer<typeof boardProfile>;
export type PortRoles = z.infer<typeof portRoles>;
export type BoardText = z.infer<typeof boardText>;
export type BoardSetting = z.infer<typeof boardSetting>;
export type Counts = z.infer<typeof counts>;
export type PartHeld = z.infer<typeof partHeld>;
/** What a value of a board means, as a row or an item of a profile says it. */
export type Meant = z.infer<typeof meant>;
/** What the row of a setting says of its meaning. */
export type RowMeant = z.infer<typeof rowMeaning>;
