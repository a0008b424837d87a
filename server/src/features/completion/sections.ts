import type { Catalog } from '../../catalog/catalog';
import type { Craft } from '../../craft/craft';
import { craftInputs, inputKeys } from '../../craft/keys';
import { ownGroup } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { Query } from '../../query/query';
import type { Range } from '../range';
import type { Snapshot } from '../snapshot';
import type { SectionContext, SectionPackContext } from './context';
import { type CompletionItem, type CompletionOptions, completionItem, snippetText } from './item';
import { inJobOrder } from './job-order';
import { ownSectionItem, ownSections } from './own';
import { isWorthOffering } from './paths';
import { type PartItem, wholePartItems } from './whole-parts';

interface OfferedSection {
  /** The path, with `<name>` where the pilot names a member. */
  readonly path: string;
  readonly detail: string;
}

/** What can be offered hangs on the catalogue alone, so the craft keeps it. */
const sections = new Query('sections to offer', ({ catalog }: Craft) => sectionsOf(catalog));

function sectionsToOffer(craft: Craft): readonly OfferedSection[] {
  return sections.get(craft).filter(({ path }) => {
    const dot = path.lastIndexOf('.');
    return dot < 0 || isWorthOffering(craft, path.slice(0, dot), path.slice(dot + 1));
  });
}

/** Sections that the script does not open for all packs; kept until one of them is opened or closed. */
const absentSections = new Query('sections not opened', (craft: Craft) =>
  sectionsToOffer(craft).filter(({ path }) => {
    const header = inputKeys.section(path);
    craftInputs.read(craft, ...header);
    return !craft.root.has(header);
  }),
);

/** Every section that settings can stand in: groups, their parts, members of closed collections. */
function sectionsOf(catalog: Catalog): readonly OfferedSection[] {
  const paths = new Map<string, string>();
  for (const group of catalog.groups.values()) {
    for (const { words } of group.parameters) {
      for (let length = 1; length < words.length; length += 1)
        paths.set(words.slice(0, length).join('.'), group.title);
    }
  }
  const all = [...paths].flatMap(([path, detail]) => expanded(catalog, path, detail));
  return inJobOrder(catalog, all, ({ path }) => path);
}

/** A path with an open part becomes one for each known member; the bare collection itself is left out. */
function expanded(catalog: Catalog, path: string, detail: string): readonly OfferedSection[] {
  if (catalog.collection(path) !== undefined)
    return hasSettingsAsMembers(catalog, path) ? [{ path, detail }] : [];
  // A member that has settings of its own comes in with the others.
  if (catalog.members(path.slice(0, path.lastIndexOf('.'))).some(({ name }) => path.endsWith(`.${name}`)))
    return [];
  const open = /^(.*?)\.<[a-z]+>/.exec(path);
  if (open === null) return [{ path, detail }];
  const members = catalog.members(open[1] ?? '');
  if (members.length === 0) return [{ path, detail }];
  const common = members.filter((member) => member.common === true);
  return [...new Set([...common, ...members])].map(({ name, title, part }) => ({
    path: path.replace(/<[a-z]+>/, name),
    detail: part === undefined ? title : `${title}: ${part}`,
  }));
}

/** Whether what stands under a collection's name is settings, such as `1 = 20 mW` under `[video.power-steps]`. */
function hasSettingsAsMembers(catalog: Catalog, path: string): boolean {
  const [first] = catalog.members(path);
  return first !== undefined && catalog.parameter(`${path}.${first.name}`) !== undefined;
}

/** Inside brackets. What the script has open already comes last: it may still be wanted for one pack. */
export function sectionItems(
  snapshot: Snapshot,
  line: ScriptLine,
  context: SectionContext,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const { range, typed, isClosed } = context;
  const close = isClosed ? '' : ']';
  const isOpen = ({ path }: OfferedSection) =>
    snapshot.script.lines(inputKeys.section(path)).some((other) => other !== line);
  const all = sectionsToOffer(snapshot.craft);
  const toItem = ({ path, detail }: OfferedSection) =>
    sectionItem(path, detail, range, `${path}${close}`, options);
  const fresh = all.filter((one) => !isOpen(one)).map((one) => ({ section: one.path, item: toItem(one) }));
  const parts = wholePartItems(snapshot, withBrackets(line, range), options, true);
  const known = [...withParts(snapshot, fresh, parts), ...all.filter(isOpen).map(toItem)];
  const own = typed.startsWith(ownGroup)
    ? ownSections(snapshot).map((path) => ownSectionItem(snapshot, path, context, close))
    : [];
  return [...known, ...own];
}

/** From the bracket before a path to the one behind it, if there is one. */
function withBrackets({ text }: ScriptLine, { start, end }: Range): Range {
  const open = text.lastIndexOf('[', start.character);
  const close = /^\s*\]/.exec(text.slice(end.character))?.[0].length ?? 0;
  return {
    start: { line: start.line, character: Math.max(0, open) },
    end: { line: end.line, character: end.character + close },
  };
}

/** On an empty line: whole headers of sections that the script does not have yet. */
export function sectionHeaderItems(
  snapshot: Snapshot,
  range: Range,
  options: CompletionOptions,
  typed = '',
): readonly CompletionItem[] {
  const headers = absentSections
    .get(snapshot.craft)
    .map(({ path, detail }) => ({ section: path, item: headerItem(path, detail, range, options) }));
  return withParts(snapshot, headers, wholePartItems(snapshot, range, options, false, typed));
}

/** Each whole part before the header that it begins with. */
function withParts(
  { catalog }: Snapshot,
  headers: readonly PartItem[],
  parts: readonly PartItem[],
): readonly CompletionItem[] {
  const path = ({ section }: PartItem) => catalog.jobOrder.find((one) => isLike(one, section)) ?? section;
  return inJobOrder(catalog, [...parts, ...headers], path).map(({ item }) => item);
}

/** Whether a section is the one that the job names: `pack.first` is `pack.<name>`. */
function isLike(named: string, section: string): boolean {
  return named === section || (named.includes('<') && section.startsWith(named.slice(0, named.indexOf('<'))));
}

/** A header in its brackets, found by its path. */
export function headerItem(
  path: string,
  detail: string,
  range: Range,
  options: CompletionOptions,
): CompletionItem {
  return { ...sectionItem(`[${path}]`, detail, range, `[${path}]`, options), filterText: path };
}

function sectionItem(
  label: string,
  detail: string,
  range: Range,
  text: string,
  { snippets }: CompletionOptions,
): CompletionItem {
  const isOpen = text.includes('<');
  const snippet = snippetText(text).replace(/<([a-z]+)>/, '$${1:$1}');
  const plain = isOpen ? text.slice(0, text.indexOf('<')) : text;
  return completionItem({
    label,
    kind: 'section',
    detail,
    range,
    insertText: isOpen && snippets ? snippet : plain,
    isSnippet: isOpen && snippets,
  });
}

/** After `@` in a header: packs that have no such section yet. */
export function packItems(
  { craft, script }: Snapshot,
  line: ScriptLine,
  { range, path, isClosed, lead }: SectionPackContext,
): readonly CompletionItem[] {
  const close = isClosed ? '' : ']';
  return craft
    .packs()
    .filter((pack) => script.lines(inputKeys.section(path, pack)).every((other) => other === line))
    .map((pack) =>
      completionItem({
        label: pack,
        kind: 'word',
        detail: `Only with pack ${pack}`,
        range,
        insertText: `${lead}${pack}${close}`,
      }),
    );
}
