import { fromJson } from './from-json';
import * as z from './plain-zod';

/** What was last handed over to a board, kept beside the script as `<script>.handed.json`. */
export const handOver = z.strictObject({
  version: z.literal(1),
  board: z.string().max(100),
  pack: z.string().max(200).nullable(),
  /** Why it was handed over in spite of must-fix findings; null where there were none. */
  reason: z.string().max(2000).nullable(),
  lines: z
    .array(
      z.strictObject({ group: z.string().max(200), name: z.string().max(200), value: z.string().max(1000) }),
    )
    .max(20_000),
});

export type HandOver = z.infer<typeof handOver>;

/** Reads a record; null for what is none: everything is then taken to have changed. */
export function readHandOver(text: string): HandOver | null {
  return fromJson(handOver, text);
}
