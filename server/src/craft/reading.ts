import type { FoundParameter } from '../catalog/catalog';
import type { ListNode, Problem, ValueNode } from '../language/ast';
import { problem } from '../language/problem';
import type { Scope } from './scope';

/** What the reading of a value needs besides the value itself. */
export interface ValueReading {
  readonly found: FoundParameter;
  readonly scope: Scope;
  /** Words that the parameter takes; null: they depend on the craft and are checked with it. */
  readonly words: readonly string[] | null;
  readonly problems: Problem[];
}

/** Says that a value of another shape was expected. */
export function refuseShape(node: ValueNode, reading: ValueReading, expected: string): null {
  reading.problems.push(problem('line/wrong-shape', node, { expected, found: shapeOf(node) }));
  return null;
}

function shapeOf(node: ValueNode): string {
  switch (node.kind) {
    case 'reference':
      return `the word \`${node.path.text}\``;
    case 'text':
      return 'a text';
    case 'date':
      return 'a date';
    case 'range':
      return 'a range';
    case 'list':
      return `a list of ${(node as ListNode).items.length}`;
    case 'curve':
      return 'a curve';
    default:
      return 'a number';
  }
}
