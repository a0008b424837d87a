import type { ExpressionNode, ReferenceNode, ValueNode } from './ast';

const none: readonly ValueNode[] = [];

/** What a value is directly made of, in order. */
export function childNodes(node: ValueNode): readonly ValueNode[] {
  switch (node.kind) {
    case 'list':
      return node.items;
    case 'range':
      return [node.low, node.high];
    case 'curve':
      return node.points.flatMap(({ x, y }): ExpressionNode[] => [x, y]);
    case 'negative':
      return [node.of];
    case 'sum':
      return node.terms.map((term) => term.node);
    case 'product':
      return node.factors.map((factor) => factor.node);
    case 'call':
      return node.args;
    default:
      return none;
  }
}

/** Every bare name in a value, in order. Which of them are words, constants or parameters is not decided here. */
export function* referencesIn(node: ValueNode | null): Iterable<ReferenceNode> {
  if (node === null) return;
  if (node.kind === 'reference') yield node;
  for (const child of childNodes(node)) yield* referencesIn(child);
}

export function hasReferences(node: ValueNode | null): boolean {
  return node !== null && (node.kind === 'reference' || childNodes(node).some(hasReferences));
}
