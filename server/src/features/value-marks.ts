import type { FoundParameter } from '../catalog/catalog';
import type { ReferenceNode, Span, ValueNode } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { childNodes } from '../language/value-nodes';
import { referenceMeaning } from './navigation/reference-meaning';
import { digitsSpan } from './navigation/value-spans';
import type { Snapshot } from './snapshot';

/** What a stretch of a value is, in the words of the legend (`semantic-tokens.ts`). */
type ValueType = 'number' | 'unit' | 'string' | 'keyword' | ReferenceType;
type ReferenceType = 'variable' | 'property' | 'namespace' | 'enumMember';

interface ValueMark {
  readonly type: ValueType;
  readonly span: Span;
}

/** What each stretch of a value is. */
export function valueMarks(
  { catalog }: Pick<Snapshot, 'catalog'>,
  line: ScriptLine,
  value: ValueNode | null,
): readonly ValueMark[] {
  const found = line.settingPath === null ? undefined : catalog.parameter(line.settingPath);
  return value === null ? [] : [...marksIn(value, line.text, found)];
}

function* marksIn(node: ValueNode, text: string, found: FoundParameter | undefined): Iterable<ValueMark> {
  switch (node.kind) {
    case 'number':
      yield { type: 'number', span: digitsSpan(text, node) };
      if (node.unitSpan !== null) yield { type: 'unit', span: node.unitSpan };
      return;
    case 'text':
    case 'bare':
      yield { type: 'string', span: node };
      return;
    case 'date':
      yield { type: 'number', span: node };
      return;
    case 'reference':
      yield { type: referenceType(node, found), span: node };
      return;
    case 'call':
      yield { type: 'keyword', span: node.name };
      break;
  }
  for (const part of childNodes(node)) yield* marksIn(part, text, found);
}

function referenceType(node: ReferenceNode, found: FoundParameter | undefined): ReferenceType {
  switch (referenceMeaning(node, found)) {
    case 'constant':
      return 'variable';
    case 'parameter':
      return 'property';
    case 'pack':
      return 'namespace';
    case 'word':
      return 'enumMember';
  }
}
