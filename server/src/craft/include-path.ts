/**
 * The URI that an include names, seen from the script it stands in; null where the path is not a relative
 * one with plain slashes, holds half a character, or leads out above the top of the script's own URI.
 */
export function resolveInclude(fromUri: string, path: string): string | null {
  const isRelative = path !== '' && !/^[/\\]|^[A-Za-z][A-Za-z0-9+.-]*:|\\|\0|[\ud800-\udfff]/u.test(path);
  const match = /^([A-Za-z][A-Za-z0-9+.-]*:(?:\/\/[^/]*)?)(\/.*)$/.exec(fromUri);
  if (!isRelative || match === null) return null;
  const [, authority = '', from = ''] = match;
  const parts = from.split('/').slice(1, -1);
  for (const part of path.split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(encodeURIComponent(part));
    else if (parts.pop() === undefined) return null;
  }
  return `${authority}/${parts.join('/')}`;
}

/** How a script includes a file: the path from the one to the other; null where no path leads there. */
export function relativeInclude(fromUri: string, toUri: string): string | null {
  const [from, to] = [fromUri.split('/'), toUri.split('/')];
  let shared = 0;
  while (shared < Math.min(from.length, to.length) - 1 && from[shared] === to[shared]) shared += 1;
  const up = from.slice(shared, -1).map(() => '..');
  const plain = [...up, ...to.slice(shared).map(fileName)].join('/');
  // A name with a colon at the start would be read as the kind of a URI.
  return [plain, `./${plain}`].find((path) => resolveInclude(fromUri, path) === toUri) ?? null;
}

/** The last part of a URI, as a person knows the file. */
export function fileName(uri: string): string {
  const last = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
