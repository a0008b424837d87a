import type { ReferenceNode, ValueNode } from '../language/ast';
import { childNodes } from '../language/value-nodes';

/** Every bare name in a value, in order. Which of them are words, constants or parameters is not decided here. */
export function* referencesIn(node: ValueNode | null): Iterable<ReferenceNode> {
  if (node === null) return;
  if (node.kind === 'reference') yield node;
  for (const child of childNodes(node)) yield* referencesIn(child);
}

export function hasReferences(node: ValueNode | null): boolean {
  return node !== null && (node.kind === 'reference' || childNodes(node).some(hasReferences));
}
