/**
 * JSON in a form that compresses better: what texts it holds stand together by the name that they are under, summary
 * after summary, beside the rest with an empty text in the place of each. `client/one-page/restored.ts` reads it.
 */
export function compacted(json: string): string {
  const texts = new Map<string, string[]>();
  const rest = without(JSON.parse(json), texts, '');
  return JSON.stringify({ rest, texts: Object.fromEntries(texts) });
}

/** The same value without its texts, which are put away in their order. `name`: what the nearest object calls it. */
function without(value: unknown, texts: Map<string, string[]>, name: string): unknown {
  if (typeof value === 'string') {
    const known = texts.get(name);
    if (known === undefined) texts.set(name, [value]);
    else known.push(value);
    return '';
  }
  if (Array.isArray(value)) return value.map((one: unknown) => without(one, texts, name));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, without(one, texts, key)]));
}
