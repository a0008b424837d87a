import { fromJson } from './common';
import * as z from './plain-zod';

/** What was last handed over to a board, kept beside the script as `<script>.handed.json`. */
export const handOver = z.strictObject({
  version: z.literal(1),
  board: z.string().check(z.maxLength(100)),
  pack: z.nullable(z.string().check(z.maxLength(200))),
  /** Why it was handed over in spite of must-fix findings; null where there were none. */
  reason: z.nullable(z.string().check(z.maxLength(2000))),
  settings: z
    .array(
      z.strictObject({
        groups: z.array(z.string().check(z.maxLength(2000))).check(z.maxLength(64)),
        name: z.string().check(z.maxLength(2000)),
        /** Left out for the first of its name. */
        occurrence: z.optional(z.int().check(z.gte(2))),
        /** Which of several values that stand in it. */
        item: z.optional(z.int().check(z.gte(1))),
        value: z.string().check(z.maxLength(20_000)),
      }),
    )
    .check(z.maxLength(100_000)),
});

export type HandOver = z.infer<typeof handOver>;

/** Reads a record; null for what is none: everything is then taken to have changed. */
export function readHandOver(text: string): HandOver | null {
  return fromJson(handOver, text);
}
