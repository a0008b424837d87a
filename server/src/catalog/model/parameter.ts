import { nameText, parameterName, prose, quantityText, source, stage } from './common';
import * as z from './plain-zod';

/** One word that a parameter can be set to. */
export const choice = z.strictObject({
  name: nameText,
  summary: prose,
  /** The pilot's question that it answers, where a long list is told in parts: choices of one stand together. */
  part: z.optional(z.string().check(z.minLength(8))),
  /** What this choice risks, where it risks anything. */
  risk: z.optional(prose),
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

/** Who holds a value: only what the board holds is in its text, and can be proved from there. */
const holder = z.enum(['board', 'transmitter', 'device', 'fact']);

/** What people call a parameter besides its name and title. */
const saidFor = z
  .array(z.string().check(z.minLength(2)))
  .check(z.describe('What people also call it, in plain words: for did-you-mean and completion.'));

/** What every parameter tells about itself. The descriptions are shown to authors of data. */
const described = {
  name: parameterName.check(
    z.describe('The whole name as a script writes it: buzzer.tune. Open parts in angle brackets.'),
  ),
  title: z
    .string()
    .check(
      z.minLength(3),
      z.maxLength(60),
      z.describe('A few words, as a heading: "Low-pass cutoff of the gyro".'),
    ),
  summary: prose.check(z.describe('What it does on the craft, in 12 to 90 words.')),
  hurts: z
    .array(z.enum(['people', 'craft', 'motor', 'pack', 'board', 'radio-neighbours']))
    .check(z.describe('Who or what a wrong value can hurt.')),
  risk: prose.check(z.describe('How it hurts, or why nothing is at risk.')),
  prove: prose.check(
    z.describe('The step on the bench or in a hover that shows that it works. On the bench: propellers off.'),
  ),
  needs: z.array(parameterName).check(z.describe('What else must be set.')),
  related: z.array(parameterName).check(z.describe('What else belongs to the same decision.')),
  stage: stage.check(z.describe('Which part of the job it belongs to.')),
  heldBy: holder.check(
    z.describe(
      'Who holds it: the board, the transmitter, another device such as a speed controller; fact: nobody, it describes the craft.',
    ),
  ),
  isNote: z
    .optional(z.literal(true))
    .check(
      z.describe(
        'Says that its value is kept for people alone: nothing is computed or checked from it, and no board holds it.',
      ),
    ),
  source: source.check(
    z.describe('Where its figures come from: title, author or body, section; or "common practice".'),
  ),
  default: z
    .nullable(
      z.strictObject({ value: z.string().check(z.minLength(1)), from: z.string().check(z.minLength(5)) }),
    )
    .check(z.describe('What the craft has when the script says nothing; null: nothing is assumed.')),
};

/** What changes as the value goes up, and as it goes down; for a flag: when it is on, and off. */
const slope = {
  higher: prose.check(z.describe('What changes as the value goes up, or while it is on.')),
  lower: prose.check(z.describe('What changes as the value goes down, or while it is off.')),
};

/** The same fields, whatever else each of them takes in. */
type Fields<T extends Record<string, z.ZodMiniType>> = {
  readonly [K in keyof T]: z.ZodMiniType<z.output<T[K]>>;
};

const between = z.tuple([quantityText, quantityText]);
const counts = z.tuple([z.int(), z.int()]);
/** What boards call the numbers of a count: `channel 5`, and `auxiliary 1` for the same. */
const numberNames = z.strictObject({
  words: z.array(z.string()).check(z.minLength(1), z.describe('Any of these stands before the number.')),
  first: z.int().check(z.describe('What 1 behind such a word stands for.')),
});
/** Words that may stand in place of a number, such as `auto`. */
const orWords = z.optional(z.array(choice));

/** Every kind of parameter but `bare`, with these fields for what describes it. */
function kindsOf<About extends Fields<typeof described>>(about: About, slopes: Fields<typeof slope>) {
  const number = {
    dimension: nameText.check(z.describe('What it measures: frequency, time, voltage, angle …')),
    unit: z.string().check(z.describe('The unit to offer first: Hz, ms, V, deg …')),
    range: between.check(z.describe('Least and most; a value outside must be mended.')),
    usual: between.check(z.describe('Least and most that are usual; a value outside is a risk.')),
  };
  const words = { choices: z.optional(z.array(choice)), choicesFrom: z.optional(choiceSource) };
  return z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('quantity'), ...about, ...slopes, ...number, orWords }),
    z.strictObject({
      kind: z.literal('count'),
      ...about,
      ...slopes,
      range: counts,
      usual: counts,
      orWords,
      calledBy: z
        .optional(z.array(numberNames).check(z.minLength(1)))
        .check(z.describe('What boards call its numbers where they write more than the number alone.')),
    }),
    z.strictObject({ kind: z.literal('flag'), ...about, ...slopes }),
    z.strictObject({
      kind: z.literal('word'),
      ...about,
      ...words,
      /** For a channel order: every permutation of these capital letters is allowed. */
      permutationOf: z.optional(z.string()),
    }),
    z.strictObject({
      kind: z.literal('words'),
      ...about,
      ...words,
      /** Most entries that the list may have. */
      most: z.int().check(z.positive()),
      mayBeEmpty: z
        .optional(z.boolean())
        .check(z.describe('Whether an empty list says something, such as that no stick is reversed.')),
    }),
    /** Both ends must lie in the range. */
    z.strictObject({ kind: z.literal('range'), ...about, ...number }),
    z.strictObject({
      kind: z.literal('curve'),
      ...about,
      ...slopes,
      /** The input, left of the arrow. */
      across: z.strictObject({ dimension: nameText, unit: z.string(), range: between }),
      /** The output, right of the arrow. */
      up: z.strictObject(number),
    }),
    z.strictObject({ kind: z.literal('place'), ...about }),
    z.strictObject({ kind: z.literal('text'), ...about, longest: z.int().check(z.positive()) }),
    z.strictObject({ kind: z.literal('date'), ...about }),
  ]);
}

/** Every setting that only the board knows: kept as it is written, whatever it means. A workspace adds none. */
function bareOf<About extends Fields<typeof described>>(about: About) {
  return z.strictObject({ kind: z.literal('bare'), ...about });
}

/** A parameter as a file of the catalogue that ships holds it: everything must be told. */
const writtenParameter = z.discriminatedUnion('kind', [kindsOf(described, slope), bareOf(described)]);

/** The same with what people call it, which stands in one file for all of them. */
const everything = { ...described, alsoCalled: saidFor };
const parameter = z.discriminatedUnion('kind', [kindsOf(everything, slope), bareOf(everything)]);

const untold = (about: string) => z._default(prose, `Nothing is written down about ${about}.`);

/** A parameter that a workspace adds: what is not told is said to be untold, and nothing is made up for it. */
export const addedParameter = kindsOf(
  {
    ...described,
    hurts: z._default(described.hurts, []),
    risk: untold('what it puts at risk'),
    prove: untold('how to prove it; propellers off'),
    needs: z._default(described.needs, []),
    related: z._default(described.related, []),
    stage: z._default(stage, 'remember'),
    heldBy: z._default(holder, 'board'),
    source: z._default(source, { text: 'this workspace' }),
    alsoCalled: z._default(saidFor, []),
    default: z._default(described.default, null),
  },
  { higher: untold('more of it'), lower: untold('less of it') },
);

const group = {
  group: nameText,
  title: z.string(),
  /** What the group is about, for the hover on a section header. */
  summary: prose,
};

/** One file of `schemas/parameters/`. */
export const writtenParameterFile = z.strictObject({
  ...group,
  parameters: z.array(writtenParameter).check(z.minLength(1)),
});

/** One of these with what people call its parameters. */
export const parameterFile = z.strictObject({
  ...group,
  parameters: z.array(parameter).check(z.minLength(1)),
});

/** `schemas/synonyms.json`: what people call each parameter, in one file, to be reviewed as a whole. */
export const synonymFile = z.strictObject({ synonyms: z.record(parameterName, saidFor) });

export type Choice = z.infer<typeof choice>;
export type ChoiceSource = z.infer<typeof choiceSource>;
export type Parameter = z.infer<typeof parameter>;
/** A parameter of one kind: `ParameterOf<'count'>`. */
export type ParameterOf<K extends Parameter['kind']> = Extract<Parameter, { kind: K }>;
export type ParameterFile = z.infer<typeof parameterFile>;
export type WrittenParameterFile = z.infer<typeof writtenParameterFile>;
export type Synonyms = z.infer<typeof synonymFile>['synonyms'];
