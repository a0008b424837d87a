import { z } from 'zod';
import { nameText, parameterName, prose, quantityText, source, stage } from './common';

/** One word that a parameter can be set to. */
export const choice = z.strictObject({
  name: nameText,
  summary: prose,
  /** What this choice risks, where it risks anything. */
  risk: prose.optional(),
});

/** Lists of words that come from other data, from the craft's board or from the script itself. */
export const choiceSource = z.enum([
  'boards',
  'ports',
  'chemistries',
  'links',
  'signals',
  'packs',
  'regions',
  'video-bands',
  'grids',
  'log-media',
  'switch-functions',
]);

const described = {
  name: parameterName,
  /** A few words, as a heading: "Low-pass cutoff of the gyro". */
  title: z.string().min(3).max(60),
  /** What it does on the craft, 12 to 90 words. */
  summary: prose,
  /** Who or what can be hurt by a wrong value. */
  hurts: z.array(z.enum(['people', 'craft', 'motor', 'pack', 'board', 'radio-neighbours'])),
  /** How it hurts, or why nothing is at risk. */
  risk: prose,
  /** The bench or hover step that shows that it works. Bench steps: propellers off. */
  prove: prose,
  /** What else must be set. */
  needs: z.array(parameterName),
  /** What else belongs to the same decision. */
  related: z.array(parameterName),
  stage,
  source,
  /** What people in the trade also call it, in plain words, for did-you-mean and completion. */
  alsoCalled: z.array(z.string().min(2)),
  /** What the craft has when the script says nothing; null: nothing is assumed. */
  default: z.strictObject({ value: z.string().min(1), from: z.string().min(5) }).nullable(),
};

/** What changes as the value goes up, and as it goes down; for a flag: when it is on, and off. */
const slope = { higher: prose, lower: prose };
const between = z.tuple([quantityText, quantityText]);
const counts = z.tuple([z.number().int(), z.number().int()]);
/** Words that may stand in place of a number, such as `auto`. */
const orWords = z.array(choice).optional();

const quantity = z.strictObject({
  kind: z.literal('quantity'),
  ...described,
  ...slope,
  dimension: nameText,
  unit: z.string(),
  /** Outside: must-fix. */
  range: between,
  /** Outside: risk. */
  usual: between,
  orWords,
});

const count = z.strictObject({
  kind: z.literal('count'),
  ...described,
  ...slope,
  range: counts,
  usual: counts,
  orWords,
});

const flag = z.strictObject({ kind: z.literal('flag'), ...described, ...slope });

const word = z.strictObject({
  kind: z.literal('word'),
  ...described,
  choices: z.array(choice).optional(),
  choicesFrom: choiceSource.optional(),
  /** For a channel order: every permutation of these capital letters is allowed. */
  permutationOf: z.string().optional(),
});

const words = z.strictObject({
  kind: z.literal('words'),
  ...described,
  choices: z.array(choice).optional(),
  choicesFrom: choiceSource.optional(),
  /** Most entries that the list may have. */
  most: z.number().int().positive(),
});

const range = z.strictObject({
  kind: z.literal('range'),
  ...described,
  dimension: nameText,
  unit: z.string(),
  /** Both ends must lie in here. */
  range: between,
  usual: between,
});

const curve = z.strictObject({
  kind: z.literal('curve'),
  ...described,
  ...slope,
  /** The input, left of the arrow. */
  across: z.strictObject({ dimension: nameText, unit: z.string(), range: between }),
  /** The output, right of the arrow. */
  up: z.strictObject({ dimension: nameText, unit: z.string(), range: between, usual: between }),
});

const place = z.strictObject({ kind: z.literal('place'), ...described });
const text = z.strictObject({ kind: z.literal('text'), ...described, longest: z.number().int().positive() });
const date = z.strictObject({ kind: z.literal('date'), ...described });

export const parameter = z.discriminatedUnion('kind', [
  quantity,
  count,
  flag,
  word,
  words,
  range,
  curve,
  place,
  text,
  date,
]);

/** One file of `schemas/parameters/`. */
export const parameterFile = z.strictObject({
  group: nameText,
  title: z.string(),
  /** What the group is about, for the hover on a section header. */
  summary: prose,
  parameters: z.array(parameter).min(1),
});

export type Choice = z.infer<typeof choice>;
export type ChoiceSource = z.infer<typeof choiceSource>;
export type Parameter = z.infer<typeof parameter>;
export type ParameterFile = z.infer<typeof parameterFile>;
