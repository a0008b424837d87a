/** A line of a listing, as far as its indent matters. */
export interface IndentedLine {
  readonly indent: number;
  readonly kind: 'setting' | 'heading' | 'unread';
  /** Where its value, or what parts it from the name, stands in the whole line. */
  readonly column: number | null;
}

/** What it means in a listing that a line is indented further than the one before. */
export function indentIn(lines: readonly IndentedLine[]): 'none' | 'groups' | 'continues' {
  let anchor: number | null = null;
  const deeper = { setting: 0, heading: 0, unread: 0 };
  let below = 0;
  for (const [at, line] of lines.entries()) {
    const before = lines[at - 1];
    if (before?.kind === 'heading' && line.indent > before.indent) {
      if (line.kind === 'unread') deeper.unread += 1;
      else below += 1;
    }
    if (anchor !== null && line.indent > anchor) {
      deeper[line.kind] += 1;
      continue;
    }
    anchor = line.kind === 'setting' ? line.indent : null;
  }
  const read = deeper.setting + deeper.heading;
  if (deeper.unread > read + below) return 'continues';
  if (below > 0) return 'groups';
  if (read === 0 || isAligned(lines)) return 'none';
  return 'groups';
}

const shareAligned = 0.8;
const leastIndents = 3;

/** Whether names end at one column and begin wherever they may: their indents mean nothing. */
function isAligned(lines: readonly IndentedLine[]): boolean {
  const settings = lines.filter(({ kind }) => kind === 'setting');
  const indents = new Set(settings.map(({ indent }) => indent));
  if (indents.size < leastIndents) return false;
  const columns = new Map<number, number>();
  for (const { column } of settings) if (column !== null) columns.set(column, (columns.get(column) ?? 0) + 1);
  const most = Math.max(0, ...columns.values());
  return most >= shareAligned * settings.length;
}
