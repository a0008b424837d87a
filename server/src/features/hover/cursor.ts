import type { FoundParameter } from '../../catalog/catalog';
import type { ReferenceNode, Span } from '../../language/ast';
import type { Position } from '../../language/document';
import type { ScriptLine } from '../../language/script-line';
import { referencesIn } from '../../language/value-nodes';
import type { Snapshot } from '../snapshot';

/** What stands under a position. */
export type Under =
  | { readonly kind: 'setting-name'; readonly line: ScriptLine; readonly span: Span; readonly path: string }
  | { readonly kind: 'section'; readonly line: ScriptLine; readonly span: Span; readonly path: string }
  | { readonly kind: 'pack'; readonly line: ScriptLine; readonly span: Span; readonly name: string }
  | { readonly kind: 'constant'; readonly line: ScriptLine; readonly span: Span; readonly name: string }
  | {
      readonly kind: 'reference';
      readonly line: ScriptLine;
      readonly span: Span;
      readonly node: ReferenceNode;
    }
  | { readonly kind: 'value'; readonly line: ScriptLine; readonly span: Span; readonly path: string }
  | { readonly kind: 'include'; readonly line: ScriptLine; readonly span: Span }
  | { readonly kind: 'acceptance'; readonly line: ScriptLine; readonly span: Span; readonly check: string };

/** Finds what a position is on; undefined on blanks, comments and what could not be understood. */
export function underCursor({ script }: Snapshot, { line: number, character }: Position): Under | undefined {
  const line = script.document.lineAt(number);
  if (line === undefined) return undefined;
  const { statement } = line;
  const { acceptance } = statement;
  if (acceptance !== null && on(acceptance, character)) {
    return { kind: 'acceptance', line, span: acceptance, check: acceptance.check };
  }
  switch (statement.kind) {
    case 'include':
      return on(statement.path, character) ? { kind: 'include', line, span: statement.path } : undefined;
    case 'section':
      if (on(statement.path, character)) {
        return { kind: 'section', line, span: statement.path, path: statement.path.text };
      }
      if (statement.pack !== null && on(statement.pack, character)) {
        return { kind: 'pack', line, span: statement.pack, name: statement.pack.text };
      }
      return undefined;
    case 'constant':
      if (on(statement.name, character)) {
        return { kind: 'constant', line, span: statement.name, name: statement.name.text };
      }
      return inValue(line, character, '');
    case 'setting':
      return inSetting(line, character);
    default:
      return undefined;
  }
}

function inSetting(line: ScriptLine, character: number): Under | undefined {
  const { statement, settingPath } = line;
  if (statement.kind !== 'setting' || settingPath === null) return undefined;
  if (on(statement.path, character)) {
    return { kind: 'setting-name', line, span: statement.path, path: settingPath };
  }
  return inValue(line, character, settingPath);
}

function inValue(line: ScriptLine, character: number, path: string): Under | undefined {
  const { statement } = line;
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return undefined;
  if (statement.value === null || !on(statement.value, character)) return undefined;
  for (const node of referencesIn(statement.value)) {
    if (on(node, character)) return { kind: 'reference', line, span: node, node };
  }
  return { kind: 'value', line, span: statement.value, path };
}

function on({ start, end }: Span, character: number): boolean {
  return character >= start && character <= end;
}

/** Whether a bare name in a setting's value is one of the words its parameter takes. */
export function isWord(snapshot: Snapshot, found: FoundParameter, name: string): boolean {
  const { parameter } = found;
  if (parameter.kind === 'flag') return name === 'on' || name === 'off';
  if (parameter.kind === 'quantity' || parameter.kind === 'count') {
    return parameter.orWords?.some((word) => word.name === name) ?? false;
  }
  if (parameter.kind !== 'word' && parameter.kind !== 'words') return false;
  return snapshot.craft.words(found)?.includes(name) ?? true;
}
