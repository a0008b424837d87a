/** Shows text from files or data as it is: nothing in it is markup, a link or HTML. */
export function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+\-.!|<>&~$]/g, (character) =>
    character === '<' ? '&lt;' : character === '&' ? '&amp;' : `\\${character}`,
  );
}

/** Text as code, whatever it holds: the fence is longer than any run of backticks in it. */
export function code(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map((match) => match[0].length));
  const fence = '`'.repeat(longest + 1);
  const pad = text.startsWith('`') || text.endsWith('`') ? ' ' : '';
  return `${fence}${pad}${text}${pad}${fence}`;
}

/** Markdown for a client that shows only plain text. */
export function plainText(markdown: string): string {
  return markdown
    .replace(/\\([\\`*_{}[\]()#+\-.!|<>&~$])/g, '$1')
    .replace(/\*\*(.+?)\*\*/g, '$1')
    .replace(/`+([^`]+)`+/g, '$1')
    .replace(/&lt;/g, '<')
    .replace(/&amp;/g, '&');
}
