import type { ExpressionNode, ReferenceNode, ValueNode } from '../language/ast';

/** Every bare name in a value, in order. Which of them are words, constants or parameters is not decided here. */
export function* referencesIn(node: ValueNode | null): Iterable<ReferenceNode> {
  if (node === null) return;
  switch (node.kind) {
    case 'reference':
      yield node;
      return;
    case 'range':
      yield* referencesIn(node.low);
      yield* referencesIn(node.high);
      return;
    case 'list':
      for (const item of node.items) yield* referencesIn(item);
      return;
    case 'curve':
      for (const { x, y } of node.points) {
        yield* referencesIn(x);
        yield* referencesIn(y);
      }
      return;
    default:
      for (const part of parts(node)) yield* referencesIn(part);
  }
}

function parts(node: ValueNode): readonly ExpressionNode[] {
  switch (node.kind) {
    case 'negative':
      return [node.of];
    case 'sum':
      return node.terms.map((term) => term.node);
    case 'product':
      return node.factors.map((factor) => factor.node);
    case 'call':
      return node.args;
    default:
      return [];
  }
}

export function hasReferences(node: ValueNode | null): boolean {
  for (const _ of referencesIn(node)) return true;
  return false;
}
