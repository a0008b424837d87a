import * as z from 'zod';
import { level } from '../../src/catalog/model/check';
import { accepted, counts, found, packName, range, readAs, version, withheld } from './common';

const edit = z.object({ path: z.string(), range, newText: z.string() });

const finding = z.object({
  ...found,
  accepted,
  pack: packName,
  range,
  related: z
    .array(z.object({ path: z.string(), range, message: z.string() }))
    .describe('Places that belong to it.'),
  fixes: z
    .array(z.object({ title: z.string(), edits: z.array(edit) }))
    .describe('Ways of mending it; each is all of its edits at once.'),
});

const file = z.object({
  path: z.string().describe('Relative to the current folder where that is shorter; - for standard input.'),
  readAs: readAs.optional().describe('What a script was taken for; not there for files of other kinds.'),
  findings: z.array(finding),
  omitted: z.int().min(1).optional().describe('How many more there are; all of them are counted.'),
  counts,
  withheld: withheld
    .optional()
    .describe(
      'Figures that checks judge a craft by and that can’t be computed; not there where there are none.',
    ),
});

const replacement = z
  .object({
    what: z.string().describe('check, parameter, chemistry, link, region, board, or choice of a setting.'),
    name: z.string(),
    file: z.string().describe('Who replaced it, in its folder: propsoff/club.json.'),
    before: z.optional(level).describe('The level that a check had.'),
    now: z.optional(level).describe('The level that it has.'),
  })
  .describe('What a file of the workspace has in place of what is built in.');

export const checkForm = z.object({ version, files: z.array(file), replaced: z.array(replacement), counts });
