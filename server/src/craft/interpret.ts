import type { FoundParameter } from '../catalog/catalog';
import type { Problem, ValueNode } from '../language/ast';
import { readCount, readPlace, readQuantity } from './interpret-number';
import { readCurve, readRange } from './interpret-shape';
import { readDate, readFlag, readText, readWord, readWords } from './interpret-word';
import type { Reading } from './reading';
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
  const reading: Reading = { found, scope, words, problems: [] };
  return { value: read(node, reading), problems: reading.problems };
}

function read(node: ValueNode, reading: Reading): Value | null {
  const { parameter } = reading.found;
  switch (parameter.kind) {
    case 'quantity':
      return readQuantity(node, reading, parameter);
    case 'count':
      return readCount(node, reading, parameter);
    case 'flag':
      return readFlag(node, reading);
    case 'word':
      return readWord(node, reading, parameter);
    case 'words':
      return readWords(node, reading, parameter);
    case 'range':
      return readRange(node, reading, parameter);
    case 'curve':
      return readCurve(node, reading, parameter);
    case 'place':
      return readPlace(node, reading);
    case 'text':
      return readText(node, reading, parameter);
    case 'date':
      return readDate(node, reading);
    case 'bare':
      return node.kind === 'bare' ? { kind: 'bare', value: node.text } : null;
  }
}
