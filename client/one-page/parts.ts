/**
 * What ships inside the page beside its own script, by its name. What the first script needs stands before it; the
 * server, the catalogue and the extension's pages come last, so that the editor is there before they have been read.
 */
export function partsSoFar(): Iterable<readonly [name: string, text: string]> {
  const held = document.querySelectorAll<HTMLScriptElement>('script[data-part]');
  return [...held].map((one) => [one.dataset.part ?? '', one.text] as const);
}

export async function allParts(): Promise<Iterable<readonly [name: string, text: string]>> {
  if (document.readyState === 'loading')
    await new Promise((resolve) => document.addEventListener('DOMContentLoaded', resolve, { once: true }));
  return partsSoFar();
}
