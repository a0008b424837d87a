/**
 * One spelling for the spellings that clients use for one file: `file:///C%3A/cfg` and `file:///c:/cfg`,
 * `a%28b%29.craft` and `a(b).craft`; the one in which includes are resolved. Names keep their case, and only
 * a drive's letter loses it.
 */
export function canonicalUri(uri: string): string {
  const match = /^([A-Za-z][A-Za-z0-9+.-]*:(?:\/\/[^/?#]*)?)(\/[^?#]*)(.*)$/s.exec(uri);
  if (match === null) return uri;
  const [, authority = '', path = '', rest = ''] = match;
  const drive = authority === 'file://' ? /^\/([A-Za-z])(?::|%3[Aa])(?=\/|$)/.exec(path) : null;
  const start = drive === null ? '' : `/${drive[1]?.toLowerCase()}:`;
  const below = path.slice(drive?.[0].length ?? 0);
  return `${authority}${start}${below.split('/').map(canonicalPart).join('/')}${rest}`;
}

function canonicalPart(part: string): string {
  try {
    return encodeURIComponent(decodeURIComponent(part));
  } catch {
    return part; // an escape that is none: then nothing else can spell it either
  }
}
