import { boardProfile } from './board-profile';
import { dataCheck } from './check';
import { parameterName, source } from './common';
import { chemistry, link, region } from './hardware';
import { addedParameter, choice } from './parameter';
import * as z from './plain-zod';
import { concept } from './trade-words';

const ours = z._default(source, { text: 'this workspace' });

/** A word more for a parameter that has a list of them. */
const addedChoice = z.strictObject({ parameter: parameterName, ...choice.shape });

const addedCheck = z.extend(dataCheck, {
  by: z._default(z.literal('data'), 'data'),
  scope: z._default(dataCheck.shape.scope, 'craft'),
  source: ours,
});

/** What one file of a workspace's `propsoff/` folder adds to the catalogue. */
export const addition = z.strictObject({
  $schema: z.optional(z.string()),
  replaces: z
    ._default(z.array(z.string().check(z.minLength(1))), [])
    .check(
      z.describe(
        'Names in this file that stand in place of what is there already. Without being named here, none may.',
      ),
    ),
  parameters: z._default(z.array(addedParameter), []).check(z.describe('Settings that scripts may use.')),
  choices: z._default(z.array(addedChoice), []).check(z.describe('Words more for settings that take words.')),
  checks: z._default(z.array(addedCheck), []).check(z.describe('Rules that hold between settings.')),
  links: z
    ._default(z.array(z.extend(link, { source: ours })), [])
    .check(z.describe('Serial links between the board and a device.')),
  chemistries: z
    ._default(z.array(z.extend(chemistry, { source: ours })), [])
    .check(z.describe('Kinds of cells that packs are made of.')),
  regions: z
    ._default(z.array(region), [])
    .check(
      z.describe('Where the craft flies: video bands and power limits. No legal advice; local rules decide.'),
    ),
  words: z
    ._default(z.array(concept), [])
    .check(
      z.describe(
        'Words by which names of a board’s settings are known, in any language; more of them for a concept that there is.',
      ),
    ),
});

/** A file of a workspace's `boards/` folder: one board profile. */
export const boardFile = z.extend(boardProfile, { $schema: z.optional(z.string()) });

export type Addition = z.infer<typeof addition>;
