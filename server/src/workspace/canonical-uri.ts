/**
 * One spelling for the spellings that clients use for one file: `file:///C%3A/cfg` and `file:///c:/cfg`.
 * Only the drive letter's case is touched; paths keep theirs.
 */
export function canonicalUri(uri: string): string {
  const drive = /^file:\/\/\/([A-Za-z])(?::|%3[Aa])(.*)$/.exec(uri);
  const plain = drive === null ? uri : `file:///${drive[1]?.toLowerCase()}:${drive[2]}`;
  return plain.replace(/%[0-9A-Fa-f]{2}/g, (escaped) => {
    const character = String.fromCharCode(Number.parseInt(escaped.slice(1), 16));
    return /[A-Za-z0-9._~-]/.test(character) ? character : escaped.toUpperCase();
  });
}
