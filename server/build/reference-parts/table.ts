import type { CitedSource } from '../../src/catalog/model/common';

/** A Markdown table. */
export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');
}

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

/** Text as it is: nothing in it ends its cell or begins a tag. The brackets round optional parts go. */
export function plain(text: string): string {
  return text
    .replace(/\[\[|\]\]/g, '')
    .replaceAll('|', '\\|')
    .replaceAll('<', '&lt;')
    .replaceAll('\n', ' ');
}

/** As it is typed. */
export function code(text: string): string {
  return `\`${text.replaceAll('|', '\\|')}\``;
}

export function sourceOf({ text, date }: CitedSource): string {
  return plain(date === undefined ? text : `${text} (${date})`);
}
