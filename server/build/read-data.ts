import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';

// What ships finds its own words for what does not fit: the library's are for the authors of data alone.
z.config(z.locales.en());

/** Reads one JSON file and checks it against its model; problems are added to the list, one a fault. */
export function readData<T>(
  root: string,
  file: string,
  model: z.ZodMiniType<T>,
  problems: string[],
): T | undefined {
  let data: unknown;
  try {
    data = JSON.parse(readFileSync(join(root, file), 'utf8'));
  } catch (caught) {
    problems.push(`${file}: ${caught instanceof Error ? caught.message : String(caught)}`);
    return undefined;
  }
  const result = model.safeParse(data);
  if (result.success) return result.data;
  for (const issue of result.error.issues)
    problems.push(`${file}: ${placeText(data, issue.path)}: ${issue.message}`);
  return undefined;
}

/** `parameters[3] "gyro.rate".range[0]`: the name of the entry on the way helps to find it. */
function placeText(data: unknown, path: readonly PropertyKey[]): string {
  let text = '';
  let at: unknown = data;
  for (const key of path) {
    text += typeof key === 'number' ? `[${key}]` : `${text === '' ? '' : '.'}${String(key)}`;
    at = property(at, key);
    const name = property(at, 'name') ?? property(at, 'id');
    if (typeof key === 'number' && typeof name === 'string') text += ` "${name}"`;
  }
  return text === '' ? 'the whole file' : text;
}

function property(value: unknown, key: PropertyKey): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
}
