/** What ships inside the page beside its own script: the server, the catalogue, the extension's pages, the starters. */
export async function unpackedParts(): Promise<ReadonlyMap<string, string>> {
  const packed = document.getElementById('parts')?.textContent ?? '{}';
  return new Map(Object.entries(JSON.parse(packed) as Record<string, string>));
}
