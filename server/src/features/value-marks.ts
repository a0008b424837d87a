import type { FoundParameter } from '../catalog/catalog';
import type { ReferenceNode, Span, ValueNode } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { childNodes } from '../language/value-nodes';
import { meaningOf } from './navigation/reference-meaning';
import { digitsSpan } from './navigation/value-spans';
import type { SemanticTokenType } from './semantic-tokens';
import type { Snapshot } from './snapshot';

export interface Marked {
  readonly type: SemanticTokenType;
  readonly span: Span;
}

/** What each stretch of a value is. */
export function valueMarks(
  { catalog }: Pick<Snapshot, 'catalog'>,
  line: ScriptLine,
  value: ValueNode | null,
): readonly Marked[] {
  const found = line.settingPath === null ? undefined : catalog.parameter(line.settingPath);
  return value === null ? [] : [...marksIn(value, line.text, found)];
}

function* marksIn(node: ValueNode, text: string, found: FoundParameter | undefined): Iterable<Marked> {
  switch (node.kind) {
    case 'number':
      yield { type: 'number', span: digitsSpan(text, node) };
      if (node.unitSpan !== null) yield { type: 'unit', span: node.unitSpan };
      return;
    case 'text':
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

function referenceType(node: ReferenceNode, found: FoundParameter | undefined): SemanticTokenType {
  switch (meaningOf(node, found)) {
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
