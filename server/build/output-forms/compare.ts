import * as z from 'zod';
import { found, span, target, version } from './common';

const side = z.object({ name: z.string(), file: z.string(), pack: z.string().nullable() });

const held = z.object({
  path: z.string(),
  text: z.string().nullable().describe('As a script writes it; null where nothing holds.'),
  isAssumed: z.boolean().describe('Whether the script leaves it out, and the default holds.'),
  target,
});

const reading = z
  .object({ text: z.string(), span, likely: z.number().describe('In the unit of the figure.') })
  .nullable()
  .describe('null where it can not be computed.');

export const moved = z.object({
  id: z.string(),
  title: z.string(),
  unit: z.string(),
  packs: z.array(z.object({ pack: z.string().nullable(), before: reading, after: reading })),
  turn: z.enum(['better', 'worse']).nullable().describe('null where it depends on what the pilot wants.'),
  size: z.number().describe('The largest move as a share of the larger value, 0 to 1.'),
});

const finding = z.object({
  ...found,
  isOnlyAlone: z
    .boolean()
    .optional()
    .describe('Whether it comes only if one change is made without the others that belong to it.'),
});
const findings = { gained: z.array(finding), lost: z.array(finding) };

const change = { path: z.string(), title: z.string(), stage: z.string().describe('A stage of the job.') };

export const compareForm = z.object({
  version,
  before: side,
  after: side,
  settings: z.array(
    z.object({
      ...change,
      before: held,
      after: held,
      change: z
        .string()
        .nullable()
        .describe('In per cent, of a setting of the board’s own of which only its role is known.'),
    }),
  ),
  members: z
    .array(z.object({ ...change, is: z.enum(['added', 'removed']), target }))
    .describe('A switch, a notch and the like that only one side has.'),
  totals: z
    .object({ better: z.int(), worse: z.int(), otherwise: z.int(), gained: z.int(), lost: z.int() })
    .describe('How many figures and findings move with everything changed at once.'),
  matters: z
    .array(
      z.discriminatedUnion('kind', [
        z.object({ kind: z.enum(['gained', 'lost']), finding }),
        z.object({ kind: z.literal('moved'), figure: moved }),
      ]),
    )
    .describe('What to know first, at most three.'),
  alone: z
    .array(
      z.object({
        paths: z.array(z.string()).describe('A setting, or several of one member.'),
        effect: z.object({
          ...findings,
          moved: z.array(moved),
          leftOut: z.int().describe('How many more figures move.'),
        }),
      }),
    )
    .describe('What each change does to the first by itself, where there are several.'),
  figures: z.array(moved).describe('The other figures that move with everything changed at once.'),
  findings: z.object(findings).describe('The other findings that come and go with it.'),
  caution: z.string(),
});
