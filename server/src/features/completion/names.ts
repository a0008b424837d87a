import type { KnownParameter } from '../../catalog/known-parameter';
import type { Craft } from '../../craft/craft';
import { craftInputs, inputKeys } from '../../craft/keys';
import type { ScriptLine } from '../../language/script-line';
import { Query } from '../../query/query';
import type { Range } from '../range';
import type { Snapshot } from '../snapshot';
import type { NameContext } from './context';
import { type CompletionItem, type CompletionOptions, completionItem, tabStop } from './item';
import { type OpenName, openNames } from './paths';
import { sectionHeaderItems } from './sections';
import { synonymItems, synonymSectionItems } from './synonyms';
import { valueSnippet } from './value-snippet';

const stages = ['wire', 'obey', 'turn', 'tune', 'see', 'safe', 'remember'];

/**
 * What a line can begin with. In a section its parameters come first, before any section the headers of
 * sections do; what the trade calls otherwise comes last.
 */
export function nameItems(
  snapshot: Snapshot,
  line: ScriptLine,
  context: NameContext,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const names = inOrder(snapshot, openNames(snapshot, line, context.typed));
  const item = (name: OpenName) => nameItem(snapshot, line, name, context, options);
  const own = names.map(item);
  const synonyms = synonymItems(snapshot, names, context.typed, item);
  if (!context.isAlone) return [...own, ...synonyms];
  const headers = sectionHeaderItems(snapshot, context.range, options, context.typed);
  const keywords = keywordItems(context.range, options);
  const others = synonymSectionItems(snapshot, line, context, options);
  return line.section.path === ''
    ? [...headers, ...keywords, ...own, ...synonyms, ...others]
    : [...own, ...synonyms, ...headers, ...keywords, ...others];
}

/** What something else needs that is set already comes first, then the stages of the pilot's job. */
function inOrder(snapshot: Snapshot, names: readonly OpenName[]): readonly OpenName[] {
  const needed = neededNames.get(snapshot.craft);
  const rank = ({ name, parameter }: KnownParameter) =>
    needed.has(name) ? -1 : stages.indexOf(parameter.stage);
  return names
    .map((name) => ({ name, rank: rank(name.known) }))
    .sort((one, other) => one.rank - other.rank)
    .map(({ name }) => name);
}

/** Kept until a parameter that needs others comes to the script or goes. */
const neededNames = new Query('needed names', (craft: Craft): ReadonlySet<string> => {
  const needed = new Set<string>();
  for (const { name, parameter } of craft.catalog.parameters.values()) {
    if (parameter.needs.length === 0) continue;
    const setting = inputKeys.setting(name);
    craftInputs.read(craft, ...setting);
    if (craft.root.has(setting)) for (const one of parameter.needs) needed.add(one);
  }
  return needed;
});

function nameItem(
  snapshot: Snapshot,
  line: ScriptLine,
  { known, rest }: OpenName,
  { range, hasEquals, hasValue, typed }: NameContext,
  { snippets }: CompletionOptions,
): CompletionItem {
  const isBare = !hasEquals && !hasValue;
  const section = line.section.path ?? '';
  const path = section === '' ? rest : `${section}.${rest}`;
  const found = snapshot.catalog.parameter(path) ?? { ...known, path, keys: [] };
  // A whole path under its own section is a slip: it still finds what it means, and is replaced.
  const prefix = `${section}.`;
  const isWhole = prefix !== '.' && typed.startsWith(prefix);
  return completionItem({
    label: rest,
    kind: 'parameter',
    detail: known.parameter.title,
    range,
    insertText: isBare
      ? `${rest} = ${snippets ? valueSnippet(snapshot, found, line.section.pack) : ''}`
      : `${rest}${hasEquals ? '' : ' ='}`,
    isSnippet: isBare && snippets,
    filterText: isWhole ? `${prefix}${rest}` : rest,
    subject: { kind: 'parameter', name: known.name },
  });
}

function keywordItems(range: Range, { snippets }: CompletionOptions): readonly CompletionItem[] {
  const words = [
    ['let', `let ${tabStop(1, 'name')} = ${tabStop(2, 'value')}`, 'A constant: a quantity under a name'],
    ['include', `include "${tabStop(1, 'path')}"`, 'Another script of this workspace'],
  ] as const;
  return words.map(([label, snippet, detail]) =>
    completionItem({
      label,
      kind: 'keyword',
      detail,
      range,
      insertText: snippets ? snippet : `${label} `,
      isSnippet: snippets,
    }),
  );
}
