import * as z from 'zod';
import { version } from './common';

const verdict = z.enum(['equal', 'different', 'missing', 'extra', 'repeated']);
const line = z.int().min(0).describe('Line of the capture, counted from 0.');

/** `prove`: what a script says against what a board shows. */
export const proveForm = z.object({
  version,
  board: z.string(),
  pack: z.string().nullable(),
  rows: z.array(
    z.object({
      group: z.string(),
      name: z.string(),
      path: z.string().nullable(),
      wanted: z.string().nullable(),
      held: z.string().nullable(),
      verdict,
      line: line.nullable(),
    }),
  ),
  truncated: z.string().nullable().describe('How the capture shows that a part of it is missing.'),
  unknown: z.array(line).describe('Lines that are nothing the profile knows.'),
  counts: z.object({
    equal: z.int(),
    different: z.int(),
    missing: z.int(),
    extra: z.int(),
    repeated: z.int(),
  }),
  isEqual: z.boolean(),
});

const proposal = z.object({
  parameter: z.string(),
  title: z.string(),
  meaning: z.string(),
  reason: z.string(),
});

/** `learn`: what was understood of a listing. */
export const learnForm = z.object({
  version,
  summary: z.string(),
  line: z.string().nullable(),
  rows: z.array(
    z.object({
      key: z.string(),
      group: z.string(),
      name: z.string(),
      value: z.string(),
      proposals: z.array(proposal).describe('The likeliest first; none is taken unless a person says so.'),
    }),
  ),
});
