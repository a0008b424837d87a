import * as z from 'zod';
import { measuredSpan, version } from './common';

const verdict = z.enum(['different', 'beside', 'missing', 'twice', 'default', 'extra', 'equal']);
const line = z.int().min(0).describe('Line of the capture, counted from 0.');
const notCompared = z.object({ path: z.string(), title: z.string(), reason: z.string().nullable() });

/** `prove`: what a script says against what a board shows. */
export const proveForm = z.object({
  version,
  board: z.string().nullable().describe('null: nobody has said which board it is.'),
  pack: z.string().nullable(),
  isWhole: z
    .boolean()
    .describe('Whether all that the script sets by hand was compared, and nothing counts against it.'),
  notCompared: z
    .array(notCompared)
    .describe('What the script sets by hand and the capture can’t show, safety first.'),
  excepted: z.array(z.string()).describe('What was named as knowingly left.'),
  cutOff: z.string().nullable().describe('How the capture shows that a part of it is missing.'),
  seemsToOmit: z.boolean().describe('Whether the board seems to list only what differs from its defaults.'),
  unread: z.array(line).describe('Lines that could not be read.'),
  counts: z.record(verdict, z.int()),
  rows: z.array(
    z.object({
      groups: z.array(z.string()).describe('The outermost first.'),
      name: z.string(),
      occurrence: z.int().min(1).describe('Which of several with these groups and this name.'),
      item: z.int().min(1).optional().describe('Which of several values that stand in it.'),
      path: z.string().nullable(),
      wanted: z.string().nullable(),
      held: z.string().nullable(),
      verdict,
      beside: z
        .object({ was: z.string(), is: z.string() })
        .nullable()
        .describe('What its line says otherwise beside the same value.'),
      line: line.nullable(),
    }),
  ),
});

const part = z.union([
  z.enum(['low', 'high', 'row', 'column']),
  z.object({ cell: z.int() }),
  z.object({ at: z.string() }),
  z.object({ entry: z.int() }),
]);

const counts = z.object({
  unit: z.string().optional(),
  scale: z.number().optional().describe('What the value in that unit is multiplied by: 10 for tenths.'),
  offset: z.number().optional(),
  step: z.string().optional(),
  limits: z.tuple([z.string(), z.string()]).optional(),
  base: z.int().optional(),
  behind: z.string().optional().describe('What stands behind the number.'),
  table: z.record(z.string(), z.string()).optional().describe('What each step of the board stands for.'),
});

const meant = z.object({
  counts: counts.optional(),
  spelled: z.record(z.string(), z.string()).optional().describe('By the parameter’s words, the board’s.'),
});

const preview = z.object({
  token: z.string().describe('As the board writes it.'),
  quantity: z.string().nullable().describe('As a script writes it; null: it can’t be read so.'),
  reason: z.string().nullable().describe('Why it can’t be read.'),
  usual: z.string().nullable(),
  lies: z.enum(['usual', 'possible', 'outside']).nullable(),
});

const conversion = z.object({
  sureness: z
    .enum(['stated', 'likely', 'ask'])
    .describe('The listing says so; only one way gives usual values; a person has to say.'),
  meant: meant.nullable().describe('null: a person has to say how it is counted or spelled.'),
  why: z.string(),
  preview,
  candidates: z.array(z.object({ meant, title: z.string(), preview })).describe('The likeliest first.'),
  takesRole: z.boolean().describe('Whether it can play its part with nobody knowing its scale.'),
});

const proposal = z.object({
  parameter: z.string().describe('As a script writes it.'),
  part: part.nullable().describe('Which part of it, where several settings hold it between them.'),
  family: z.string().describe('What is counted alike on every board.'),
  title: z.string(),
  meaning: z.string(),
  reason: z.string(),
  conversion: conversion
    .nullable()
    .describe('How its value becomes that; what belongs together is counted alike.'),
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
      sureness: z.enum(['sure', 'likely', 'possible']).nullable().describe('How sure the first proposal is.'),
      proposals: z.array(proposal).describe('The likeliest first; none is taken unless a person says so.'),
    }),
  ),
  outcomes: z
    .array(
      z.object({
        key: z.string(),
        said: z
          .object({
            means: z.string(),
            isRole: z.boolean().optional(),
            parts: z.array(part).optional(),
            item: z.int().optional().describe('Which of several values that stand in it, from 1.'),
            counted: counts.optional(),
            more: counts.optional(),
            spelled: z.record(z.string(), z.string()).optional(),
          })
          .describe('What was said of it.'),
        is: z
          .enum(['taken', 'role', 'left'])
          .describe('role: without a figure, for nobody has said how it is counted.'),
        why: z.string(),
        conversions: z.array(conversion).describe('One for each value that stands in it.'),
      }),
    )
    .describe('What became of all that was confirmed.'),
  measured: z
    .array(
      z.object({
        family: z.string(),
        term: z.enum(['proportional', 'integral', 'derivative']),
        one: measuredSpan.nullable().describe('What the board’s 1 is; null where that can’t be said.'),
        taken: z.string().nullable().describe('The same, as it is taken.'),
        evidence: z.string(),
        numbers: z.array(
          z.object({
            key: z.string(),
            means: z.string(),
            value: z.string(),
            measured: measuredSpan.nullable(),
            why: z.string().nullable().describe('Why nothing was measured of it.'),
            quantity: z.string().nullable(),
            row: z.unknown().describe('As a profile has it; null where nothing is proposed.'),
          }),
        ),
      }),
    )
    .nullable()
    .describe('What a recording says of its gains; null without one.'),
});
