import type { ExpressionNode, NumberNode, Span, ValueNode } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { childNodes } from '../../language/value-nodes';

/** A part of a line's value, with what it is a part of, the nearest first. */
export interface NodeAt<N extends ValueNode = ValueNode> {
  readonly node: N;
  readonly within: readonly ValueNode[];
}

/** The value of a line that sets something. */
export function valueOfLine({ statement }: ScriptLine): ValueNode | null {
  return statement.kind === 'setting' || statement.kind === 'constant' ? statement.value : null;
}

/** The innermost part of a line's value that a cursor or a selection lies in; its ends count. */
function innermost(line: ScriptLine, { start, end }: Span): NodeAt | null {
  const within: ValueNode[] = [];
  let node = valueOfLine(line);
  if (node === null || start < node.start || end > node.end) return null;
  for (;;) {
    const inner: ValueNode | undefined = childNodes(node).find(
      (child) => child.start <= start && end <= child.end,
    );
    if (inner === undefined) return { node, within };
    within.unshift(node);
    node = inner;
  }
}

/** The number under a cursor or a selection. */
export function numberAt(line: ScriptLine, at: Span): NodeAt<NumberNode> | null {
  const found = innermost(line, at);
  return found?.node.kind === 'number' ? { ...found, node: found.node } : null;
}

/** The number under a cursor with its sign, or just the calculation that is selected. */
export function calculationAt(line: ScriptLine, at: Span): NodeAt<ExpressionNode> | null {
  const found = innermost(line, trimmed(line, at));
  if (found === null || !isCalculation(found.node)) return null;
  const { node, within } = found;
  if (at.start === at.end) {
    const [around, ...outer] = within;
    if (node.kind !== 'number') return null;
    return around?.kind === 'negative' ? { node: around, within: outer } : { node, within };
  }
  const { start, end } = trimmed(line, at);
  return node.start === start && node.end === end ? { node, within } : null;
}

function trimmed({ text }: ScriptLine, { start, end }: Span): Span {
  const part = text.slice(start, end);
  return { start: start + part.length - part.trimStart().length, end: start + part.trimEnd().length };
}

function isCalculation(node: ValueNode): node is ExpressionNode {
  return ['number', 'reference', 'negative', 'sum', 'product', 'call'].includes(node.kind);
}
