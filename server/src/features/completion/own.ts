import { settingOfOwnPath } from '../../board/listing/own-path';
import { fileName } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import type { PlacedLine } from '../../craft/setting';
import { isOwnPath, joinedPath, ownGroup, pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import type { Snapshot } from '../snapshot';
import type { SectionContext } from './context';
import { type CompletionItem, type CompletionOptions, completionItem, snippetText } from './item';
import type { OwnNameContext, OwnValueContext } from './own-context';

/** A list of all that a large board has would only slow an editor down. */
export const mostNames = 500;

/** The settings that stand under `own` anywhere in the craft: by path, the first line of each. */
function ownSettings({ craft }: Snapshot): ReadonlyMap<string, PlacedLine> {
  const found = new Map<string, PlacedLine>();
  for (const { script } of craft.layers().layers) {
    for (const line of script.document.lines()) {
      const path = line.settingPath;
      if (path !== null && isOwnPath(path) && !found.has(path)) found.set(path, { script, line });
    }
  }
  return found;
}

/** Names that stand under `own` elsewhere: in what is included, or for other packs. */
export function ownNameItems(
  snapshot: Snapshot,
  line: ScriptLine,
  context: OwnNameContext,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const { path: section, pack } = line.section;
  if (section === null) return [];
  const prefix = joinedPath(section, '');
  const items: CompletionItem[] = [];
  for (const [path, placed] of ownSettings(snapshot)) {
    if (!path.startsWith(prefix) || !isTyped(path.slice(prefix.length), context.typed)) continue;
    const lines = snapshot.script.lines(inputKeys.setting(path, pack));
    if (lines.some((other) => other !== line)) continue;
    if (placed.line === line) continue;
    items.push(nameItem(path.slice(prefix.length), placed, context, options));
    if (items.length === mostNames) break;
  }
  return items;
}

/** Whether a name may be the one that is being typed; the client looks more closely. */
function isTyped(name: string, typed: string): boolean {
  const [first = ''] = typed.replaceAll('"', '').toLowerCase();
  return name.toLowerCase().includes(first);
}

function nameItem(
  name: string,
  placed: PlacedLine,
  { range, typed, hasEquals }: OwnNameContext,
  { snippets }: CompletionOptions,
): CompletionItem {
  const value = writtenValue(placed);
  const stop = snippets ? `\${1:${snippetText(value)}}` : value;
  return completionItem({
    label: name,
    kind: 'parameter',
    detail: `${value} in ${fileName(placed.script.uri)}`,
    range,
    insertText: hasEquals ? name : `${snippets ? snippetText(name) : name} = ${stop}`,
    isSnippet: !hasEquals && snippets,
    filterText: filterTextOf(name, typed),
    subject: { kind: 'parameter', name: `${ownGroup}.${name}` },
  });
}

/** Without its quotes where none is typed, so that the client finds it by its letters. */
function filterTextOf(path: string, typed: string): string {
  return typed.includes('"') ? path : stepsOf(path).join('.');
}

/** Values that the same setting has elsewhere: what it overrides, and what it is for other packs. */
export function ownValueItems(
  { craft }: Snapshot,
  line: ScriptLine,
  { range, lead }: OwnValueContext,
): readonly CompletionItem[] {
  const { settingPath } = line;
  if (settingPath === null) return [];
  const packs = [null, ...craft.packs()];
  const others = packs
    .flatMap((pack) => craft.lines(inputKeys.setting(settingPath, pack)))
    .filter((placed) => placed.line !== line);
  const values = new Map(others.map((placed) => [writtenValue(placed), placed]));
  return [...values].flatMap(([value, { script, line: other }]) => {
    if (value === '') return [];
    const pack = other.section.pack === null ? '' : ` with pack ${other.section.pack}`;
    const detail = `In ${fileName(script.uri)}${pack}`;
    return [completionItem({ label: value, kind: 'value', detail, range, insertText: lead + value })];
  });
}

function writtenValue({ line: { statement, text } }: PlacedLine): string {
  const node = statement.kind === 'setting' ? statement.value : null;
  return node === null ? '' : text.slice(node.start, node.end);
}

/** Groups of the board's own settings, as sections. */
export function ownSections(snapshot: Snapshot): readonly string[] {
  const paths = new Set<string>();
  for (const path of ownSettings(snapshot).keys()) {
    const groups = settingOfOwnPath(stepsOf(path))?.groups ?? [];
    for (let depth = 1; depth <= groups.length; depth += 1)
      paths.add(pathText([ownGroup, ...groups.slice(0, depth)]));
  }
  return [...paths].slice(0, mostNames);
}

/** A section of such a group, for a header. */
export function ownSectionItem(
  { catalog }: Snapshot,
  path: string,
  { range, typed }: SectionContext,
  close: string,
): CompletionItem {
  return completionItem({
    label: path,
    kind: 'section',
    detail: catalog.groups.get(ownGroup)?.title ?? '',
    range,
    insertText: `${path}${close}`,
    filterText: filterTextOf(path, typed),
  });
}
