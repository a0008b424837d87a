import {
  findNodeAtLocation,
  getLocation,
  getNodeValue,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import type { Fault } from '../catalog/faults/fault';
import type { Span } from '../language/ast';

/** A text that is JSON, or the place where it stops being so. */
export type JsonText =
  | { readonly kind: 'value'; readonly value: unknown; readonly tree: Node }
  | { readonly kind: 'broken'; readonly at: Span; readonly message: string };

/** Reads strict JSON: no comma after the last entry, no name twice in one object; comments only where they may be. */
export function readJsonTree(text: string, mayHaveComments = false): JsonText {
  try {
    return read(text, mayHaveComments);
  } catch (error) {
    // Brackets within brackets without end exhaust the stack.
    const message = error instanceof RangeError ? 'it is nested too deeply' : 'it cannot be read';
    return { kind: 'broken', at: { start: 0, end: text.length }, message };
  }
}

function read(text: string, mayHaveComments: boolean): JsonText {
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { disallowComments: !mayHaveComments });
  const [first] = errors;
  if (first !== undefined || tree === undefined) return broken(text, first);
  const twice = repeatedName(tree);
  if (twice !== null) return { kind: 'broken', ...twice };
  return { kind: 'value', value: mayHaveComments ? getNodeValue(tree) : JSON.parse(text), tree };
}

/** Where a fault lies in the text: the value, or what is nearest around it. */
export function spanOf(tree: Node, at: Fault['at']): Span {
  for (let length = at.length; length >= 0; length -= 1) {
    const node = findNodeAtLocation(tree, at.slice(0, length));
    if (node !== undefined) return { start: node.offset, end: node.offset + node.length };
  }
  return { start: tree.offset, end: tree.offset + tree.length };
}

/** Where the name of a property stands. */
export function keySpanOf(tree: Node, at: Fault['at'], key: string): Span {
  const node = findNodeAtLocation(tree, [...at, key])?.parent?.children?.[0];
  return node === undefined ? spanOf(tree, at) : { start: node.offset, end: node.offset + node.length };
}

/** By the names that the library gives its errors. */
const expected: ReadonlyMap<string, string> = new Map([
  ['InvalidSymbol', 'this is no JSON value: a text needs double quotes'],
  ['InvalidNumberFormat', 'this is no number'],
  ['PropertyNameExpected', 'a name in double quotes was expected'],
  ['ValueExpected', 'a value was expected'],
  ['ColonExpected', 'a colon was expected'],
  ['CommaExpected', 'a comma was expected'],
  ['CloseBraceExpected', 'a closing brace was expected'],
  ['CloseBracketExpected', 'a closing bracket was expected'],
  ['EndOfFileExpected', 'the end of the file was expected'],
  ['InvalidCommentToken', 'JSON takes no comments'],
  ['UnexpectedEndOfString', 'the text has no closing double quote'],
  ['InvalidUnicode', 'this is no character code'],
  ['InvalidEscapeCharacter', 'this escape means nothing'],
  ['InvalidCharacter', 'a control character must be written as an escape'],
]);

function broken(text: string, error: ParseError | undefined): JsonText {
  if (text.trim() === '' || error === undefined) {
    return {
      kind: 'broken',
      at: { start: 0, end: text.length },
      message: 'the file is empty: {} adds nothing',
    };
  }
  const start = Math.min(error.offset, text.length);
  const end = Math.min(start + Math.max(error.length, 1), text.length);
  return {
    kind: 'broken',
    at: { start, end },
    message: expected.get(printParseErrorCode(error.error)) ?? 'this is no JSON',
  };
}

/** The second of two properties of one object with the same name: JSON would silently forget the first. */
function repeatedName(node: Node): { readonly at: Span; readonly message: string } | null {
  const seen = new Set<unknown>();
  for (const child of node.children ?? []) {
    const [key, value] = child.type === 'property' ? (child.children ?? []) : [undefined, child];
    if (key !== undefined) {
      const at = { start: key.offset, end: key.offset + key.length };
      if (seen.has(key.value)) return { at, message: `"${key.value}" stands twice in one object` };
      seen.add(key.value);
    }
    const inside = value === undefined ? null : repeatedName(value);
    if (inside !== null) return inside;
  }
  return null;
}

/** The members and indices that lead to a place in a JSON text. */
export function pathAt(text: string, offset: number): readonly (string | number)[] {
  return getLocation(text, offset).path;
}
