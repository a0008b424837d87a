import type * as z from 'zod/mini';

/** Reads JSON as a model has it; null for text that is none. */
export function fromJson<T>(model: z.ZodMiniType<T>, text: string): T | null {
  try {
    return model.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
