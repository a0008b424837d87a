import * as z from 'zod';
import { stage } from '../../src/catalog/model/common';
import { span, target, unchecked, version } from './common';

const step = z.object({
  id: z.string(),
  title: z.string(),
  do: z.string(),
  see: z.string(),
  expected: z.array(z.object({ words: z.string(), text: z.string(), span })),
  readings: z.array(
    z.object({ id: z.string(), words: z.string(), unit: z.string(), setting: z.string().nullable() }),
  ),
  assumed: z.array(z.string()),
  source: z.string().nullable().describe('null: common practice.'),
  target,
});

export const benchCardForm = z.object({
  version,
  name: z.string(),
  about: z.array(z.string()),
  pack: z.string().nullable(),
  cautions: z.array(z.string()),
  note: z.string(),
  unchecked,
  first: z
    .array(z.object({ message: z.string(), advice: z.string() }))
    .describe('What must be mended before anything is connected.'),
  accepted: z.array(z.object({ message: z.string(), reason: z.string() })),
  replaced: z
    .array(z.string())
    .describe('What files of the workspace have in place of what is built in, a sentence each.'),
  parts: z.array(
    z.object({ stage: z.union([stage, z.literal('hover')]), title: z.string(), steps: z.array(step) }),
  ),
});
