import * as z from 'zod';
import { level } from '../../src/catalog/model/check';
import { source, stage } from '../../src/catalog/model/common';
import { version } from './common';

const named = z.object({ name: z.string(), title: z.string() });
const told = { version, name: z.string(), title: z.string() };
const from = z.object(source.shape);

const check = z.object({
  ...told,
  kind: z.literal('check'),
  level,
  message: z
    .string()
    .describe('What it says; {a.name} stands for a value, [[…]] for a part that may be left out.'),
  advice: z.string(),
  rule: z.string().nullable().describe('The rule that an algorithm follows, in words.'),
  when: z.array(z.string()).describe('The conditions of a rule that is data; all must hold.'),
  source: from,
});

const parameter = z.object({
  ...told,
  kind: z.literal('parameter'),
  summary: z.string(),
  takes: z.string(),
  assumed: z.string().nullable().describe('What holds when it is not set; null: nothing is assumed.'),
  choices: z.array(z.object({ name: z.string(), summary: z.string() })),
  risk: z.string(),
  prove: z.string(),
  stage,
  needs: z.array(z.string()),
  related: z.array(z.string()),
  source: from,
});

const parameters = z.object({
  version,
  kind: z.literal('parameters'),
  name: z.string(),
  summary: z.string().nullable(),
  parameters: z.array(named),
});

export const explainForm = z.discriminatedUnion('kind', [check, parameter, parameters]);
