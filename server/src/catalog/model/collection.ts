import { nameText, prose } from './common';
import * as z from './plain-zod';

/** A member that a closed collection can have, such as the switch function `arm`. */
export const member = z.strictObject({
  name: nameText,
  title: z.string().check(z.minLength(3)),
  summary: prose,
  /** The pilot's question that it answers, where a collection is told in parts: members of one stand together. */
  part: z.optional(z.string().check(z.minLength(8))),
  /** Settings of its neighbours that mean nothing here, each with why. */
  without: z.optional(z.array(z.strictObject({ setting: nameText, why: prose })).check(z.minLength(1))),
  /** Shown by most craft; completion puts it first. */
  common: z.optional(z.boolean()),
  /** An overlay element: how many characters of the grid it usually takes. */
  characters: z.optional(z.int().check(z.positive())),
  /** An overlay element: what it looks like, with an invented reading. */
  sample: z.optional(z.string().check(z.minLength(1))),
});

/** A path under which the script names things: `pack.<name>`, `switch.<function>`, `gyro.filter.<number>`. */
export const collection = z.strictObject({
  /** The path before the open part: `pack`, `gyro.filter`. */
  path: z.string(),
  /** The word in angle brackets in the parameters' names. */
  placeholder: nameText,
  /** One of these, in a sentence: "a pack". */
  one: z.string(),
  summary: prose,
  keys: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('open') }),
    z.strictObject({ kind: z.literal('closed'), members: z.array(member).check(z.minLength(1)) }),
    z.strictObject({ kind: z.literal('numbers'), from: z.int(), to: z.int() }),
  ]),
});

export const collectionFile = z.strictObject({ collections: z.array(collection) });

export type Collection = z.infer<typeof collection>;
export type Member = z.infer<typeof member>;
