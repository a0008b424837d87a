import type { CurveNode, ListNode, ValueNode } from './ast';
import { readExpression } from './expression-parser';
import { problem, replacement } from './problem';
import type { TokenReader } from './token-reader';

/** Most items that a list, or points that a curve, may have; more is no setting of a craft. */
const mostItems = 1000;

/** Reads a whole value. null: refused, and the reader has said why. */
export function readValue(reader: TokenReader): ValueNode | null {
  const first = reader.peek();
  if (first?.kind === 'text') {
    reader.next();
    return first;
  }
  if (first?.kind === 'date') {
    reader.next();
    return first;
  }
  if (reader.peekSign('[')) return readList(reader);
  return readRangeOrCurve(reader);
}

function readList(reader: TokenReader): ListNode | null {
  const start = reader.next()?.start ?? 0;
  const items: ValueNode[] = [];
  if (!reader.peekSign(']')) {
    do {
      if (items.length >= mostItems) {
        reader.refuse(`at most ${mostItems} items`);
        return null;
      }
      const item = reader.peekSign('[') || reader.peekSign(']') ? null : readItem(reader);
      if (item === null) {
        reader.refuse('an item of the list');
        return null;
      }
      items.push(item);
    } while (reader.takeSign(','));
  }
  if (!reader.takeSign(']')) {
    reader.refuse('`,` or `]`', closing(reader));
    return null;
  }
  return { kind: 'list', items, start, end: reader.lastEnd };
}

/** Only at the end of the line it is sure that nothing but the bracket is missing. */
function closing(reader: TokenReader) {
  const at = { start: reader.lastEnd, end: reader.lastEnd };
  return reader.peek() === undefined ? [replacement('Close the list', at, ']')] : [];
}

function readItem(reader: TokenReader): ValueNode | null {
  const first = reader.peek();
  if (first?.kind !== 'text') return readExpression(reader);
  reader.next();
  return first;
}

function readRangeOrCurve(reader: TokenReader): ValueNode | null {
  const first = readExpression(reader);
  if (first === null) return null;
  if (reader.takeSign('..')) {
    const third = reader.peek();
    if (third?.kind === 'number' && third.start === reader.lastEnd && third.digits.startsWith('.')) {
      const dots = { start: reader.lastEnd - 2, end: reader.lastEnd + 1 };
      const values = { found: '`...`', expected: '`..` between the ends of a range' };
      reader.fail(problem('line/not-understood', dots, values, [replacement('Write `..`', dots, '..')]));
      return null;
    }
    const high = readExpression(reader);
    return high && { kind: 'range', low: first, high, start: first.start, end: high.end };
  }
  if (!reader.peekSign('->')) return first;
  return readCurve(reader, first);
}

function readCurve(reader: TokenReader, first: CurveNode['points'][number]['x']): CurveNode | null {
  const points: { x: typeof first; y: typeof first }[] = [];
  let x: typeof first | null = first;
  for (;;) {
    if (x === null) return null;
    if (!reader.takeSign('->')) {
      reader.refuse('`->` between the two ends of a point');
      return null;
    }
    const y = readExpression(reader);
    if (y === null) return null;
    points.push({ x, y });
    if (points.length >= mostItems || !reader.takeSign(',')) break;
    x = readExpression(reader);
  }
  return { kind: 'curve', points, start: first.start, end: reader.lastEnd };
}
