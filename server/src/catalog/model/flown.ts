import { fromJson } from './common';
import * as z from './plain-zod';

/** The settings at the last noted flight, kept beside the script as `<script>.flown.json`. */
export const flown = z.strictObject({
  version: z.literal(1),
  /** The flight's name in the script. */
  flight: z.string().check(z.maxLength(200)),
  pack: z.nullable(z.string().check(z.maxLength(200))),
  /** Every setting with the pack that was flown, as a script writes it. */
  settings: z
    .array(
      z.strictObject({
        path: z.string().check(z.maxLength(2000)),
        value: z.string().check(z.maxLength(10_000)),
      }),
    )
    .check(z.maxLength(120_000)),
});

export type Flown = z.infer<typeof flown>;

/** Reads a record; null for what is none: nothing is then said to have changed. */
export function readFlown(text: string): Flown | null {
  return fromJson(flown, text);
}
