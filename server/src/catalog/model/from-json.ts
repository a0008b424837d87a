import type * as z from 'zod';

/** Reads JSON as a model has it; null for text that is none. */
export function fromJson<T>(model: z.ZodType<T>, text: string): T | null {
  try {
    return model.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
