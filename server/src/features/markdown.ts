/** Shows text from files or data as it is: nothing in it is markup, a link or HTML. */
export function escaped(text: string): string {
  return text
    .split(/[\r\n]+/)
    .map((line, index, lines) => withoutBlanks(line, index > 0, index < lines.length - 1))
    .filter((line, index, lines) => line !== '' || index === 0 || index === lines.length - 1)
    .join(' ')
    .replace(/[\\`*_{}[\]()#+\-.!|<>&~$]|:(?=\/\/)/g, (character) =>
      character === '<' ? '&lt;' : character === '&' ? '&amp;' : `\\${character}`,
    );
}

/** A line without the blanks at those of its ends at which other lines are joined to it. */
function withoutBlanks(line: string, atStart: boolean, atEnd: boolean): string {
  const from = atStart ? line.trimStart() : line;
  return atEnd ? from.trimEnd() : from;
}

/** Text as code, whatever it holds: the fence is longer than any run of backticks in it. */
export function code(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map((match) => match[0].length));
  const fence = '`'.repeat(longest + 1);
  // One blank on either side is taken off again when it is shown.
  const pad = /^`|`$|^ .* $/.test(text) ? ' ' : '';
  return `${fence}${pad}${text}${pad}${fence}`;
}

const marks = /(?<!`)(`+)(?!`)( ?)(.+?)\2(?<!`)\1(?!`)|\\([!-/:-@[-`{-~])|\*+|&lt;|&amp;/g;

/** Markdown of ours for a client that shows only plain text. In one pass, so that shown text is never read as marks. */
export function plainText(markdown: string): string {
  return markdown.replace(marks, (mark, _fence, _pad, content?: string, character?: string) => {
    if (content !== undefined) return content;
    if (character !== undefined) return character;
    return mark === '&lt;' ? '<' : mark === '&amp;' ? '&' : '';
  });
}
