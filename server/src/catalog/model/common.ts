import * as z from './plain-zod';

/** A name of ours: lower-case English words joined by hyphens. */
export const nameText = z.string().check(z.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/));

/**
 * A parameter's name as the catalogue spells it: `gyro.filter.1.cutoff`, or with the open part of a
 * collection in angle brackets: `pack.<name>.cells`, `gyro.filter.<number>.centre`.
 */
export const parameterName = z.string().check(z.regex(/^[a-z][a-z-]*(\.([a-z][a-z-]*|<[a-z]+>))+$/));

/** A quantity as a script would write it: `120 Hz`, `1.5 kohm`, `-40 degC`. Checked against the unit table on loading. */
export const quantityText = z.string().check(z.minLength(1));

/** A whole sentence or a few, in plain words. */
export const prose = z.string().check(z.minLength(12));

/** Where a figure or a rule comes from. */
export const source = z.strictObject({
  /** Title, author or body, section; or "common practice"; or "from memory". */
  text: z.string().check(z.minLength(5)),
  /** Date or edition of the source, where it has one. */
  date: z.optional(z.string()),
});

/** The pilot's job, in order. */
export const stage = z.enum(['wire', 'obey', 'turn', 'tune', 'see', 'safe', 'remember']);

export type CitedSource = z.infer<typeof source>;

/** Reads JSON as a model has it; null for text that is none. */
export function fromJson<T>(model: z.ZodMiniType<T>, text: string): T | null {
  try {
    return model.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
