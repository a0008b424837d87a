import * as z from 'zod';
import { stage } from '../../src/catalog/model/common';
import { span, target, unchecked, version } from './common';

const figures = z.array(z.object({ words: z.string(), text: z.string(), span }));

const reading = z.object({
  id: z.string(),
  words: z.string(),
  unit: z.string(),
  isWords: z.boolean().describe('Whether words are wanted and no figure.'),
  setting: z.string().nullable().describe('The setting of a flight that keeps it; null: its note does.'),
  script: z
    .string()
    .nullable()
    .describe('The setting that the script leaves open and that is found out here; null: it is none.'),
});

const step = z.object({
  id: z.string(),
  title: z.string(),
  only: z
    .array(z.string())
    .nullable()
    .describe('The only packs that it is done with; null: no pack is left out.'),
  do: z.string(),
  see: z.string(),
  expected: figures.describe('The same with every pack.'),
  readings: z.array(reading).describe('Read off once.'),
  withPacks: z
    .array(z.object({ pack: z.string(), expected: figures, readings: z.array(reading) }))
    .describe('What is another with each pack, or is done with each.'),
  asked: z.array(reading).describe('Settings that the script leaves open, to be written down.'),
  unknown: z.array(z.string()).describe('Figures that can’t be computed, each with what to write for it.'),
  assumed: z.array(z.string()),
  source: z.string().nullable().describe('null: common practice.'),
  target,
});

export const benchCardForm = z.object({
  version,
  name: z.string(),
  about: z.array(z.string()),
  packs: z.array(z.string()).describe('The packs that it is for.'),
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
    z.object({
      stage: z.union([stage, z.literal('hover')]),
      title: z.string(),
      steps: z.array(step),
      signed: z.array(reading).describe('Who did it and when.'),
      noticed: reading,
    }),
  ),
});
