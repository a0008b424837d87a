/**
 * What ships inside the page beside its own script. What the first script needs stands before it; the server, the
 * catalogue and the extension's pages come last, so that the editor is there before they have been read.
 */
export function firstParts(): Iterable<readonly [name: string, text: string]> {
  return partsIn('first-parts');
}

export async function laterParts(): Promise<Iterable<readonly [name: string, text: string]>> {
  if (document.readyState === 'loading')
    await new Promise((resolve) => document.addEventListener('DOMContentLoaded', resolve, { once: true }));
  return partsIn('parts');
}

function partsIn(id: string): Iterable<readonly [name: string, text: string]> {
  const packed = document.getElementById(id)?.textContent ?? '{}';
  return Object.entries(JSON.parse(packed) as Record<string, string>);
}
