import type { Catalog } from '../catalog/catalog';
import type { SectionStatement } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { type Range, rangeInLine } from './range';
import { sectionExtents } from './section-extents';
import type { Snapshot } from './snapshot';

export type SymbolKind = 'section' | 'pack' | 'switch' | 'setting' | 'constant' | 'include' | 'more';

/** An entry of the outline. The selection lies inside the range, children inside their parent; names say something. */
export interface DocumentSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly range: Range;
  readonly selection: Range;
  readonly children: readonly DocumentSymbol[];
}

/** More entries than this only slow an editor down. */
export const mostSymbols = 5000;
const longestDetail = 80;

/** The outline: sections with their settings, constants and includes, in the order of the script. */
export function documentSymbols(snapshot: Pick<Snapshot, 'script' | 'catalog'>): readonly DocumentSymbol[] {
  const { document } = snapshot.script;
  const lines = [...document.lines()];
  const extents = new Map(sectionExtents(document).map((extent) => [extent.first, extent]));
  const outline = new Outline(lines);
  for (const [number, line] of lines.entries()) {
    const extent = extents.get(number);
    if (extent === undefined) outline.add(entryOf(line, number));
    else outline.open(sectionEntry(line, number, extent.last, lines, snapshot.catalog));
  }
  return outline.done();
}

type Entry = Omit<DocumentSymbol, 'children'>;

/** Gathers entries up to the cap and counts the rest. */
class Outline {
  private readonly top: (Entry & { readonly children: DocumentSymbol[] })[] = [];
  private section: DocumentSymbol[] | null = null;
  private count = 0;
  private leftOut = 0;

  constructor(private readonly lines: readonly ScriptLine[]) {}

  open(entry: Entry): void {
    if (!this.hasRoom()) return;
    const children: DocumentSymbol[] = [];
    this.top.push({ ...entry, children });
    this.section = children;
  }

  add(entry: Entry | null): void {
    if (entry === null || !this.hasRoom()) return;
    const symbol = { ...entry, children: [] };
    if (this.section === null) this.top.push(symbol);
    else this.section.push(symbol);
  }

  done(): readonly DocumentSymbol[] {
    if (this.leftOut === 0) return this.top;
    const last = this.lines.length - 1;
    const range = rangeInLine(last, { start: 0, end: this.lines[last]?.text.length ?? 0 });
    const name = `… and ${this.leftOut} more`;
    const detail = `The outline shows the first ${mostSymbols}.`;
    return [...this.top, { name, detail, kind: 'more', range, selection: range, children: [] }];
  }

  private hasRoom(): boolean {
    if (this.count < mostSymbols) this.count += 1;
    else this.leftOut += 1;
    return this.leftOut === 0;
  }
}

function sectionEntry(
  line: ScriptLine,
  first: number,
  last: number,
  lines: readonly ScriptLine[],
  catalog: Catalog,
): Entry {
  const range = {
    start: { line: first, character: 0 },
    end: { line: last, character: lines[last]?.text.length ?? 0 },
  };
  const { statement } = line;
  if (statement.kind === 'section') {
    return { ...sectionWords(statement, catalog), range, selection: rangeInLine(first, statement.path) };
  }
  const name = line.text.trim() || '[';
  const selection = rangeInLine(first, contentOf(line));
  return { name, detail: 'not understood', kind: 'section', range, selection };
}

/** `[pack.sprint]` reads "pack sprint", with what the catalogue says beside it. */
function sectionWords({ path, pack }: SectionStatement, catalog: Catalog) {
  const [collection = '', member, ...rest] = path.text.split('.');
  const suffix = pack === null ? '' : ` @ ${pack.text}`;
  const kind: SymbolKind =
    member !== undefined && (collection === 'pack' || collection === 'switch') ? collection : 'section';
  if (member === undefined || catalog.collection(collection) === undefined) {
    const detail = catalog.groups.get(collection)?.title ?? '';
    return { name: path.text + suffix, detail, kind };
  }
  const known = catalog.members(collection).find(({ name }) => name === member);
  const name = [collection, [member, ...rest].join('.')].join(' ') + suffix;
  return { name, detail: known?.title ?? catalog.groups.get(collection)?.title ?? '', kind };
}

function entryOf(line: ScriptLine, number: number): Entry | null {
  const { statement } = line;
  const range = rangeInLine(number, contentOf(line));
  switch (statement.kind) {
    case 'setting':
    case 'constant': {
      const name = statement.kind === 'setting' ? statement.path : statement.name;
      const detail = valueAsWritten(line);
      return { name: name.text, detail, kind: statement.kind, range, selection: rangeInLine(number, name) };
    }
    case 'include': {
      const name = statement.path.value.trim() || '""';
      return {
        name,
        detail: 'include',
        kind: 'include',
        range,
        selection: rangeInLine(number, statement.path),
      };
    }
    default:
      return null;
  }
}

function valueAsWritten({ text, statement }: ScriptLine): string {
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return '';
  const { value } = statement;
  if (value === null) return '';
  const written = [...text.slice(value.start, value.end)];
  if (written.length <= longestDetail) return written.join('');
  return `${written.slice(0, longestDetail - 1).join('')}…`;
}

/** The line without the blanks around it; a line that opens a section is never empty. */
function contentOf({ text }: ScriptLine): { readonly start: number; readonly end: number } {
  const end = text.trimEnd().length;
  return { start: Math.min(end, text.length - text.trimStart().length), end };
}
