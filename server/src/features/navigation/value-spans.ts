import type { ExpressionNode, NumberNode, Span, ValueNode } from '../../language/ast';
import { childNodes } from '../../language/value-nodes';

/** Everything in a value around a place, the innermost first. `text` is the line's. */
export function valueSpansAt(text: string, node: ValueNode, at: number): readonly Span[] {
  if (!spanHolds(node, at)) return [];
  const inner = partsOf(text, node).find((part) => spanHolds(part, at));
  if (inner === undefined) return [node];
  return 'kind' in inner ? [...valueSpansAt(text, inner, at), node] : [inner, node];
}

/** The number as written, with its sign and without its unit. */
export function digitsSpan(text: string, { start, end, unitSpan }: NumberNode): Span {
  return { start, end: start + text.slice(start, unitSpan?.start ?? end).trimEnd().length };
}

/** A text without its quotes. */
export function insideQuotes(text: string, { start, end }: Span): Span {
  const isClosed = end - start >= 2 && /["\u201c-\u201f\u2033«»\uff02]/.test(text[end - 1] ?? '');
  return { start: start + 1, end: isClosed ? end - 1 : end };
}

export function spanHolds({ start, end }: Span, at: number): boolean {
  return start <= at && at <= end;
}

function partsOf(text: string, node: ValueNode): readonly (ValueNode | Span)[] {
  switch (node.kind) {
    case 'number':
      return node.unitSpan === null ? [] : [digitsSpan(text, node), node.unitSpan];
    case 'text':
      return [insideQuotes(text, node)];
    case 'bare':
      return text[node.start] === '"' ? [insideQuotes(text, node)] : [];
    case 'call':
      return [node.name, ...node.args];
    case 'curve':
      return node.points.flatMap((point) =>
        node.points.length === 1 ? [point.x, point.y] : [pointNode(point)],
      );
    default:
      return childNodes(node);
  }
}

/** One point of a curve as a curve of its own. */
function pointNode(point: { readonly x: ExpressionNode; readonly y: ExpressionNode }): ValueNode {
  return { kind: 'curve', points: [point], start: point.x.start, end: point.y.end };
}
