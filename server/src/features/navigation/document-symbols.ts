import type { ScriptLine } from '../../language/script-line';
import { rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { sectionExtents } from './section-extents';
import { entryOf, type OutlineEntry, sectionEntry } from './symbol-entries';

/** An entry of the outline with what stands below it; children lie inside their parent. */
export interface DocumentSymbol extends OutlineEntry {
  readonly children: readonly DocumentSymbol[];
}

/** More entries than this only slow an editor down. */
export const mostSymbols = 5000;

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

/** Gathers entries up to the cap and counts the rest. */
class Outline {
  private readonly top: (OutlineEntry & { readonly children: DocumentSymbol[] })[] = [];
  private section: DocumentSymbol[] | null = null;
  private count = 0;
  private leftOut = 0;

  constructor(private readonly lines: readonly ScriptLine[]) {}

  open(entry: OutlineEntry): void {
    if (!this.hasRoom()) return;
    const children: DocumentSymbol[] = [];
    this.top.push({ ...entry, children });
    this.section = children;
  }

  add(entry: OutlineEntry | null): void {
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
