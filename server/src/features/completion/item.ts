import type { Range } from '../range';

/** What kind of thing an item is, for its icon. */
export type ItemKind =
  | 'parameter'
  | 'section'
  | 'part'
  | 'word'
  | 'unit'
  | 'constant'
  | 'value'
  | 'keyword'
  | 'file'
  | 'acceptance';

/** What `completionDetails` needs to describe an item later, without any memory of the list it was in. */
export type ItemSubject =
  | { readonly kind: 'parameter'; readonly name: string }
  | { readonly kind: 'choice'; readonly parameter: string; readonly choice: string }
  | { readonly kind: 'check'; readonly id: string }
  | { readonly kind: 'none' };

export interface CompletionItem {
  readonly label: string;
  readonly kind: ItemKind;
  readonly detail: string;
  readonly range: Range;
  /** With tab stops (`$1`, `${1:text}`) when `isSnippet`. */
  readonly insertText: string;
  readonly isSnippet: boolean;
  /** What the client compares with the text in the range. */
  readonly filterText: string;
  readonly subject: ItemSubject;
  /** Whether the detail is short, and helps to pick one: then it stands in the list itself. */
  readonly isHint?: true;
}

export interface CompletionOptions {
  /** Whether the client takes tab stops. */
  readonly snippets: boolean;
  /** The character that made the client ask by itself; null: the pilot asked, or is typing a word. */
  readonly trigger: string | null;
}

type Essentials = Pick<CompletionItem, 'label' | 'kind' | 'detail' | 'range'>;

/** An item that inserts its label as it is, but for what is given otherwise. */
export function completionItem(item: Essentials & Partial<CompletionItem>): CompletionItem {
  const { label } = item;
  return { insertText: label, filterText: label, isSnippet: false, subject: { kind: 'none' }, ...item };
}

/** Text that stands in a snippet as it is. */
export function snippetText(text: string): string {
  return text.replace(/[\\$}]/g, (character) => `\\${character}`);
}

/** Choices inside a snippet's `${1|…|}`. */
function snippetChoices(choices: readonly string[]): string {
  return choices.map((choice) => choice.replace(/[\\$},|]/g, (character) => `\\${character}`)).join(',');
}

/** Tab stop number `index`, with a text to type over. */
export function tabStop(index: number, text: string): string {
  return `\${${index}:${snippetText(text)}}`;
}

/** Tab stop number `index`, with words to pick from; a bare stop where there are none. */
export function tabChoice(index: number, choices: readonly string[]): string {
  return choices.length === 0 ? `$${index}` : `\${${index}|${snippetChoices(choices)}|}`;
}

/** Sort keys that keep a list's order, whatever its length: text is compared as text. */
export function sortKeys(count: number): (index: number) => string {
  const width = String(count).length;
  return (index) => String(index).padStart(width, '0');
}
