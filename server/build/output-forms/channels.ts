import * as z from 'zod';
import { version } from './common';

export const channelsForm = z.object({
  version,
  pilots: z.int(),
  region: z.string(),
  answer: z.string().describe('The whole of it in a sentence.'),
  channels: z
    .array(
      z.object({
        names: z
          .array(z.object({ band: z.string(), channel: z.int() }))
          .describe('A frequency may stand in several plans.'),
        frequency: z.number().describe('MHz'),
        isKept: z.boolean().describe('Whether it stays where it was.'),
      }),
    )
    .describe('Rising; empty where so many do not fit.'),
  spacing: z.number().nullable().describe('MHz between the two that are nearest to each other.'),
  products: z.int().describe('How many products of third order fall on a channel in use.'),
  nearestProduct: z.number().nullable().describe('MHz from such a product to the nearest channel in use.'),
  caution: z.string(),
});
