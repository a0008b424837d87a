import { nameText, parameterName } from './common';
import * as z from './plain-zod';

/** A word or a few, in small letters; ä is written ae, and other letters without their marks. */
const expression = z.string().check(z.regex(/^[a-z0-9]+([ '.-][a-z0-9]+)*$/));
const language = z.string().check(z.regex(/^[a-z]{2}$/));

/** Something that names of settings speak of, with what it is called in each language. */
export const concept = z.strictObject({
  concept: nameText.check(z.describe('A name of ours, by which others refer to it.')),
  words: z
    .record(language, z.array(expression).check(z.minLength(1)))
    .check(z.describe('What it is called, by the language’s two letters.')),
  short: z
    .optional(z.array(expression))
    .check(z.describe('How it is shortened, beside what can be seen from its words.')),
  near: z.optional(z.array(nameText)).check(z.describe('What it is a kind of, or may be meant instead.')),
  madeOf: z
    .optional(z.array(nameText).check(z.minLength(2)))
    .check(z.describe('What it says together: its words stand for each of these.')),
});

/** `schemas/trade-words.json`: by which words of which languages a board’s setting is known. */
export const tradeWordsFile = z.strictObject({
  concepts: z.array(concept),
  opposites: z
    .array(z.array(nameText).check(z.minLength(2)))
    .check(z.describe('Of these a name that says one does not mean another.')),
  numbers: z
    .record(language, z.array(expression))
    .check(z.describe('What the numbers from 1 on are called.')),
  empty: z
    .record(language, z.array(expression))
    .check(z.describe('Words that say nothing of what a setting is.')),
  said: z
    .record(parameterName, z.array(expression))
    .check(z.describe('How names of settings say a parameter, in English words of the list above.')),
});

export type TradeWords = z.infer<typeof tradeWordsFile>;
export type Concept = z.infer<typeof concept>;
