import { type DirtKind, lineEnd, soiled } from './dirt';
import type { Item, Line, PrintedListing, Stretch, TrueSetting } from './listing';
import type { Shape } from './shape';

/** A listing that can be printed, and printed anew with something changed. */
export interface Board {
  readonly shape: Shape;
  readonly items: readonly Item[];
  readonly dirt: readonly DirtKind[];
  readonly dirtSeed: number;
}

interface Places {
  name: Stretch | null;
  value: Stretch | null;
  line: number;
}

export function printed({ shape, items, dirt, dirtSeed }: Board): PrintedListing {
  const lines = soiled(shape.print(items), dirt, dirtSeed);
  const { text, places, stretches } = laidOut(lines, dirt);
  const linesOf = (kind: Line['kind']) => stretches.filter((_, number) => lines[number]?.kind === kind);
  return {
    text,
    settings: counted(items, places),
    comments: linesOf('comment'),
    headings: linesOf('heading'),
  };
}

function laidOut(lines: readonly Line[], dirt: readonly DirtKind[]) {
  const places = new Map<number, Places>();
  const stretches: Stretch[] = [];
  let text = dirt.includes('mark') ? '\ufeff' : '';
  lines.forEach(({ pieces }, line) => {
    const start = text.length;
    for (const { text: part, of } of pieces) {
      if (of !== null && of.field !== 'unit')
        note(places, of.item, of.field, { start: text.length, end: text.length + part.length }, line);
      text += part;
    }
    stretches.push({ start, end: text.length });
    text += lineEnd(dirt, line);
  });
  return { text, places, stretches };
}

/** A value in several pieces goes from the first to the last. */
function note(
  places: Map<number, Places>,
  item: number,
  field: 'name' | 'value',
  { start, end }: Stretch,
  line: number,
): void {
  const known = places.get(item) ?? { name: null, value: null, line };
  if (field === 'name') known.line = line;
  known[field] = { start: known[field]?.start ?? start, end };
  places.set(item, known);
}

function counted(
  items: readonly Item[],
  places: ReadonlyMap<number, Readonly<Places>>,
): readonly TrueSetting[] {
  const counts = new Map<string, number>();
  return items.map((item, index) => {
    const place = places.get(index);
    if (place?.name == null) throw new Error(`${item.name} was not printed`);
    const key = JSON.stringify([item.groups, item.name]);
    const occurrence = (counts.get(key) ?? 0) + 1;
    counts.set(key, occurrence);
    return { ...item, occurrence, line: place.line, at: { name: place.name, value: place.value } };
  });
}
