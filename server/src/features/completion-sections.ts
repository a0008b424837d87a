import type { Catalog } from '../catalog/catalog';
import type { CompletionOptions } from './completion';
import { type CompletionItem, snippetText } from './completion-item';
import type { Range } from './range';
import type { Snapshot } from './snapshot';

interface Section {
  /** The path, with `<name>` where the pilot names a member. */
  readonly path: string;
  readonly detail: string;
}

/** Every section that settings can stand in: groups, their parts, members of closed collections. */
function sectionsOf(catalog: Catalog): readonly Section[] {
  const paths = new Map<string, string>();
  for (const group of catalog.groups.values()) {
    for (const { words } of group.parameters) {
      for (let length = 1; length < words.length; length += 1)
        paths.set(words.slice(0, length).join('.'), group.title);
    }
  }
  return [...paths].flatMap(([path, detail]) => expanded(catalog, path, detail));
}

/** A path with an open part becomes one for each known member; the bare collection itself is left out. */
function expanded(catalog: Catalog, path: string, detail: string): readonly Section[] {
  if (catalog.collection(path) !== undefined) return [];
  const open = /^(.*?)\.<[a-z]+>/.exec(path);
  if (open === null) return [{ path, detail }];
  const members = catalog.members(open[1] ?? '');
  if (members.length === 0) return [{ path, detail }];
  return members.map(({ name, title }) => ({
    path: path.replace(/<[a-z]+>/, name),
    detail: title,
  }));
}

/** Inside brackets. */
export function sectionItems(
  { catalog }: Snapshot,
  range: Range,
  isClosed: boolean,
  { snippets }: CompletionOptions,
): readonly CompletionItem[] {
  const close = isClosed ? '' : ']';
  return sectionsOf(catalog).map(({ path, detail }) =>
    item(path, detail, range, `${path}${close}`, snippets),
  );
}

/** On an empty line: whole headers. */
export function sectionHeaderItems(
  { catalog }: Snapshot,
  range: Range,
  { snippets }: CompletionOptions,
): readonly CompletionItem[] {
  return sectionsOf(catalog).map(({ path, detail }) =>
    item(`[${path}]`, detail, range, `[${path}]`, snippets),
  );
}

function item(label: string, detail: string, range: Range, text: string, snippets: boolean): CompletionItem {
  const isOpen = text.includes('<');
  const snippet = snippetText(text).replace(/<([a-z]+)>/, '$${1:$1}');
  return {
    label,
    kind: 'section',
    detail,
    range,
    insertText: isOpen ? (snippets ? snippet : text.replace(/<[a-z]+>.*$/, '')) : text,
    isSnippet: isOpen && snippets,
    filterText: label,
    subject: { kind: 'none' },
  };
}

/** After `@` in a header. */
export function packItems({ craft }: Snapshot, range: Range): readonly CompletionItem[] {
  return craft.packs().map((pack) => ({
    label: pack,
    kind: 'word',
    detail: 'Only with this pack',
    range,
    insertText: pack,
    isSnippet: false,
    filterText: pack,
    subject: { kind: 'none' },
  }));
}
