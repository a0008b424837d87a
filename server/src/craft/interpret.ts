import type { FoundParameter } from '../catalog/catalog';
import type { Problem, ValueNode } from '../language/ast';
import { interpretCount, interpretPlace, interpretQuantity } from './interpret-number';
import { interpretCurve, interpretRange } from './interpret-shape';
import { interpretDate, interpretFlag, interpretText, interpretWord, interpretWords } from './interpret-word';
import type { ValueReading } from './reading';
import type { Scope } from './scope';
import type { Value } from './value';

export interface Interpretation {
  /** null: set, but its value is unknown. */
  readonly value: Value | null;
  readonly problems: readonly Problem[];
}

/** Reads a value as its parameter's kind says, and checks it against the parameter's limits. */
export function interpret(
  node: ValueNode,
  found: FoundParameter,
  scope: Scope,
  words: readonly string[] | null,
): Interpretation {
  const reading: ValueReading = { found, scope, words, problems: [] };
  return { value: read(node, reading), problems: reading.problems };
}

function read(node: ValueNode, reading: ValueReading): Value | null {
  const { parameter } = reading.found;
  switch (parameter.kind) {
    case 'quantity':
      return interpretQuantity(node, reading, parameter);
    case 'count':
      return interpretCount(node, reading, parameter);
    case 'flag':
      return interpretFlag(node, reading);
    case 'word':
      return interpretWord(node, reading, parameter);
    case 'words':
      return interpretWords(node, reading, parameter);
    case 'range':
      return interpretRange(node, reading, parameter);
    case 'curve':
      return interpretCurve(node, reading, parameter);
    case 'place':
      return interpretPlace(node, reading);
    case 'text':
      return interpretText(node, reading, parameter);
    case 'date':
      return interpretDate(node, reading);
    case 'bare':
      return node.kind === 'bare' ? { kind: 'bare', value: node.text } : null;
  }
}
