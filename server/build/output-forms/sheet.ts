import * as z from 'zod';
import {
  accepted,
  axisRow,
  counts,
  found,
  packName,
  readAs,
  span,
  target,
  unchecked,
  version,
  withheld,
} from './common';

import { compareForm } from './compare';

const cell = z.object({
  text: z.string().describe('The figure with its unit.'),
  span,
  place: z.string().nullable().describe('Where it holds, for a figure of one of several places.'),
  why: z.string().nullable().describe('The formula with the numbers put in; null for a setting.'),
  assumed: z.array(z.string()).describe('What had to be assumed, in words.'),
  target,
});

const ways = z
  .array(z.object({ title: z.string(), paths: z.array(z.string()) }))
  .describe('Settings to write, all of one way.');

const row = {
  id: z.string(),
  title: z.string(),
  from: z.array(z.string()).describe('Settings that it hangs on.'),
};

const table = {
  columns: z.array(z.string()).describe('The packs.'),
  rows: z.array(z.object({ ...row, cells: z.array(cell.nullable()).describe('One for each column.') })),
  shared: z.array(z.object({ ...row, cell })).describe('Figures that no pack changes.'),
  withheld: z
    .array(z.object({ ...row, text: z.string().describe('Why, and what to write.'), ways }))
    .describe('Of what a pilot looks at first, what can’t be computed with any pack.'),
  key: z.array(z.string()).describe('What a pilot looks at first.'),
};

const part = { title: z.string(), answer: z.string().describe('In short.') };
const caution = z.string();

const findings = z.object({
  id: z.literal('can-it-fly'),
  ...part,
  unchecked,
  notKnown: z
    .array(
      z.object({
        figures: z.array(z.string()).describe('Their ids.'),
        text: z.string().describe('What is not known, and what to do about it.'),
        ways,
      }),
    )
    .describe('Figures that can’t be computed, those with the same need together.'),
  counts,
  accepted: z.int(),
  findings: z.array(z.object({ ...found, accepted, pack: packName, target })),
  leftOut: z.int().describe('How many more there are than are told.'),
  assumed: z.array(z.string()),
  replaced: z
    .array(z.string())
    .describe('What files of the workspace have in place of what is built in, a sentence each.'),
  caution,
});

const wiring = z.object({
  id: z.literal('wired-where'),
  ...part,
  board: z.string().nullable(),
  hasAllPorts: z.boolean(),
  ports: z.array(
    z.object({
      name: z.string(),
      devices: z.array(z.object({ name: z.string(), path: z.string(), target })),
      sharedWith: z.string().nullable(),
      hasConflict: z.boolean(),
    }),
  ),
  rails: z.array(
    z.object({
      voltage: z.string(),
      isOnBoard: z.boolean().nullable(),
      used: z.number().describe('In ampere.'),
      limit: z.number().nullable().describe('In ampere.'),
      loads: z.array(
        z.object({ name: z.string(), current: z.number().nullable(), target, hasConflict: z.boolean() }),
      ),
      hasConflict: z.boolean(),
    }),
  ),
});

const figures = z.object({
  id: z.enum(['my-hands', 'how-late', 'which-pack', 'stay-cool', 'who-sees-me']),
  ...part,
  told: z
    .array(z.string())
    .optional()
    .describe('What the figures come to, and what would change them, in sentences.'),
  ...table,
  variants: z
    .array(z.object({ words: z.string(), path: z.string(), to: z.string().nullable() }))
    .optional()
    .describe('What may be seen side by side: without the load, in the cold.'),
  caution,
});

const flights = z.object({
  id: z.literal('learned'),
  ...part,
  flights: z.array(
    z.object({
      name: z.string(),
      date: z.string().nullable(),
      pack: z.string().nullable(),
      facts: z.array(z.object({ title: z.string(), text: z.string() })),
      measured: z.array(z.string()).describe('What corrects the figures, and what lies too far from them.'),
      heat: z
        .array(z.string())
        .describe(
          'After too hot motors: what the filters left of their noise, and what other cutoffs would.',
        ),
      note: z.string().nullable(),
      changed: z.string().nullable(),
      damage: z.string().nullable(),
      recording: z
        .object({ path: z.string().describe('As the script names it.'), uri: z.string() })
        .nullable()
        .describe('The file that was recorded on it.'),
      target,
    }),
  ),
  caution,
});

const figure = z.object({
  id: z.string(),
  title: z.string(),
  unit: z.string().describe('Of the three numbers.'),
  low: z.number(),
  likely: z.number(),
  high: z.number(),
  lowWords: z.string().optional().describe('What stands for the low end where no number does.'),
  highWords: z.string().optional().describe('The same for the high end.'),
  place: z.string().optional().describe('Where it holds, for a figure of one of several places.'),
  measured: z
    .array(
      z.object({
        kind: z.string(),
        flight: z.string(),
        reading: z.number().describe('In the unit of the figure, as the estimate.'),
        estimate: z.number().nullable().describe('Before any flight; null where it could not hover by it.'),
        isCorrected: z.boolean(),
        text: z.string(),
      }),
    )
    .optional()
    .describe('What flights with this pack measured of it.'),
  settledBy: z
    .array(z.string())
    .optional()
    .describe('Settings any of which would tell what was assumed for want of them, and is much of the span.'),
  assumed: z.array(z.string()),
  why: z.string(),
});

const narrowing = z.object({
  id: z.string().describe('Of the figure.'),
  title: z.string(),
  pack: z.string().nullable(),
  text: z.string().describe('The whole of it in a sentence.'),
  how: z.string().describe('How it is measured.'),
  path: z.string().describe('The setting that the reading goes into.'),
  tried: z.string().describe('What was tried for it: what is likely.'),
  before: z.string().describe('The span as it is.'),
  after: z.string().describe('The span as it would be.'),
});

export const sheetForm = z.object({
  version,
  name: z.string(),
  about: z.array(z.string()),
  readAs,
  packs: z.array(z.object({ name: z.string(), detail: z.string(), refusal: z.string().nullable() })),
  packInView: z.string().nullable(),
  parts: z.array(z.discriminatedUnion('id', [findings, wiring, figures, flights])),
  figures: z
    .array(z.object({ pack: z.string().nullable(), figures: z.array(figure) }))
    .describe('The numbers behind the sheet, pack by pack.'),
  withheld,
  otherwise: compareForm
    .omit({ version: true })
    .optional()
    .describe('Side by side with what was asked for by --without, --cold and --if.'),
  recorded: z
    .object({
      flight: z.string().describe('The name of its section.'),
      date: z.string().nullable(),
      pack: packName,
      recording: z.string().describe('The file, or which of its flights.'),
      answers: z
        .array(z.object({ figure: z.string().describe('The id.'), text: z.string() }))
        .describe('Beside figures that estimate the same.'),
      rows: z.array(axisRow).describe('Axis by axis.'),
      isSimulated: z.boolean(),
      basis: z.string().nullable().describe('What the axes rest on; null where none is told of.'),
      why: z.string().nullable().describe('Why no axis is told of; null where one is.'),
    })
    .optional()
    .describe('What the last flight that names a recording measured; with --recorded.'),
  narrowing: z
    .array(narrowing)
    .optional()
    .describe('What to measure, for each figure that would be surer by it; with --surer.'),
});
