import { dataCheck } from './check';
import { parameterName, source } from './common';
import { type Board, board, chemistry, link, region } from './hardware';
import { addedParameter, choice } from './parameter';
import * as z from './plain-zod';

const ours = source.default({ text: 'this workspace' });

/** A word more for a parameter that has a list of them. */
const addedChoice = z.strictObject({ parameter: parameterName, ...choice.shape });

const addedCheck = dataCheck.extend({
  by: z.literal('data').default('data'),
  scope: dataCheck.shape.scope.default('craft'),
  source: ours,
});

/** What one file of a workspace's `propsoff/` folder adds to the catalogue. */
export const addition = z.strictObject({
  $schema: z.string().optional(),
  replaces: z
    .array(z.string().min(1))
    .default([])
    .describe(
      'Names in this file that stand in place of what is there already. Without being named here, none may.',
    ),
  parameters: z.array(addedParameter).default([]).describe('Settings that scripts may use.'),
  choices: z.array(addedChoice).default([]).describe('Words more for settings that take words.'),
  checks: z.array(addedCheck).default([]).describe('Rules that hold between settings.'),
  links: z
    .array(link.extend({ source: ours }))
    .default([])
    .describe('Serial links between the board and a device.'),
  chemistries: z
    .array(chemistry.extend({ source: ours }))
    .default([])
    .describe('Kinds of cells that packs are made of.'),
  regions: z
    .array(region)
    .default([])
    .describe('Where the craft flies: video bands and power limits. No legal advice; local rules decide.'),
});

/** A file of a workspace's `boards/` folder: one board profile. */
export const boardFile = board.extend({
  $schema: z.string().optional(),
  replaces: addition.shape.replaces,
  source: ours,
});

/** The same as its author writes it: what has a default may be left out. */
export type BoardFile = z.input<typeof boardFile>;

export type Addition = z.infer<typeof addition> & { readonly boards: readonly Board[] };
