import { settingOfOwnPath } from '../../board/listing/own-path';
import { lookOf } from '../../board/listing/value-look';
import { ownRows } from '../../board/profile/own-rows';
import { titleOf } from '../../catalog/board-title';
import { fileName } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import type { PlacedLine } from '../../craft/setting';
import { bareLiteral } from '../../language/own-line';
import { isOwnPath, joinedPath, ownGroup, pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { statedOfOwn } from '../hover/stated-text';
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

/** A name that can stand on a line, with a value to type over. */
interface OwnName {
  readonly path: string;
  readonly value: string;
  readonly detail: string;
}

/** Names that stand under `own` elsewhere, in what is included or for other packs, then those of the board's profile. */
function* openNames(snapshot: Snapshot, line: ScriptLine): Iterable<OwnName> {
  const settings = ownSettings(snapshot);
  for (const [path, placed] of settings) {
    if (placed.line === line) continue;
    const value = writtenValue(placed);
    yield { path, value, detail: `${value} in ${fileName(placed.script.uri)}` };
  }
  const board = snapshot.craft.board();
  if (board === undefined) return;
  for (const { path, row } of ownRows(board)) {
    if (settings.has(path)) continue;
    const { default: assumed, words, range, remark } = row.setting;
    const value = assumed ?? words?.[0] ?? range?.[0] ?? '';
    yield { path, value: value === '' ? '' : bareLiteral(value), detail: remark ?? titleOf(board) };
  }
}

/** Names that can be set on a line under `own`. */
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
  for (const open of openNames(snapshot, line)) {
    const name = open.path.slice(prefix.length);
    if (!open.path.startsWith(prefix) || !isTyped(name, context.typed)) continue;
    const lines = snapshot.script.lines(inputKeys.setting(open.path, pack));
    if (lines.some((other) => other !== line)) continue;
    items.push(nameItem(name, open, context, options));
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
  { path, value, detail }: OwnName,
  { range, typed, hasEquals }: OwnNameContext,
  { snippets }: CompletionOptions,
): CompletionItem {
  const stop = snippets ? `\${1:${snippetText(value)}}` : value;
  return completionItem({
    label: name,
    kind: 'parameter',
    detail,
    range,
    insertText: hasEquals ? name : `${snippets ? snippetText(name) : name} = ${stop}`,
    isSnippet: !hasEquals && snippets,
    filterText: filterTextOf(name, typed),
    subject: { kind: 'parameter', name: path },
  });
}

/** Without its quotes where none is typed, so that the client finds it by its letters. */
function filterTextOf(path: string, typed: string): string {
  return typed.includes('"') ? path : stepsOf(path).join('.');
}

/** Values that a setting has elsewhere: what it overrides, what it is for other packs; then what its board states. */
export function ownValueItems(
  snapshot: Snapshot,
  line: ScriptLine,
  { range, lead }: OwnValueContext,
): readonly CompletionItem[] {
  const { settingPath } = line;
  if (settingPath === null) return [];
  const { craft } = snapshot;
  const packs = [null, ...craft.packs()];
  const others = packs
    .flatMap((pack) => craft.lines(inputKeys.setting(settingPath, pack)))
    .filter((placed) => placed.line !== line);
  const values = new Map(others.map((placed) => [writtenValue(placed), whereOf(placed)]));
  const more = [...statedValues(snapshot, settingPath), ...otherFlags(values.keys())];
  for (const [value, detail] of more) if (!values.has(value)) values.set(value, detail);
  values.delete('');
  return [...values].map(([value, detail]) =>
    completionItem({ label: value, kind: 'value', detail, range, insertText: lead + value }),
  );
}

function whereOf({ script, line: { section } }: PlacedLine): string {
  return `In ${fileName(script.uri)}${section.pack === null ? '' : ` with pack ${section.pack}`}`;
}

/** The other word of a pair such as `on` and `off`. */
function otherFlags(values: Iterable<string>): readonly (readonly [string, string])[] {
  return [...values].flatMap((value) => {
    const look = lookOf(value);
    return look.kind === 'flag'
      ? [[look.pair[look.isOn ? 1 : 0], `The other of ${look.pair.join(' and ')}`]]
      : [];
  });
}

/** What is stated of a setting: its words, its default, the ends of its range. */
function statedValues(snapshot: Snapshot, path: string): ReadonlyMap<string, string> {
  const { words, assumed, low, high } = statedOfOwn(snapshot, path);
  const range = low === null || high === null ? [] : [low, high];
  return new Map([
    ...words.map((word) => [bareLiteral(word), 'One of its words'] as const),
    ...range.map((end) => [bareLiteral(end), 'An end of its range'] as const),
    ...(assumed === null ? [] : [[bareLiteral(assumed), 'Its default'] as const]),
  ]);
}

function writtenValue({ line: { statement, text } }: PlacedLine): string {
  const node = statement.kind === 'setting' ? statement.value : null;
  return node === null ? '' : text.slice(node.start, node.end);
}

/** Groups of the board's own settings, as sections. */
export function ownSections(snapshot: Snapshot): readonly string[] {
  const paths = new Set<string>();
  const board = snapshot.craft.board();
  const listed = board === undefined ? [] : ownRows(board).map(({ path }) => path);
  for (const path of [...ownSettings(snapshot).keys(), ...listed]) {
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
