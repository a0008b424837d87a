/** A glob of the few kinds that our client asks with, as a pattern: `**\/boards/*.json`, `**\/*.{csv,tsv}`. */
export function globPattern(glob: string): RegExp {
  const body = glob.replace(/\*\*\/|\*|\{[^}]*\}|[.+^$()|[\]\\]/g, (found) => {
    if (found === '**/') return '(?:.*/)?';
    if (found === '*') return '[^/]*';
    if (found.startsWith('{')) return `(?:${found.slice(1, -1).split(',').join('|')})`;
    return `\\${found}`;
  });
  return new RegExp(`^${body}$`);
}
