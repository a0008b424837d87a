import { findNodeAtLocation } from 'jsonc-parser';
import type { Span } from '../language/ast';
import { readJsonTree } from './json-text';

/** A text in a JSON file that is to be another one, with its quotes. */
export interface JsonEdit {
  readonly at: Span;
  readonly newText: string;
}

/** The name of the board in what is kept beside a board's text, where the board is to be called otherwise. */
export function boardNameEdits(text: string, boards: ReadonlyMap<string, string>): readonly JsonEdit[] {
  return textsAt(text, ['board']).flatMap(({ value, at }) => editOf(at, boards.get(value)));
}

/** Paths that a file of choices names; patterns that mean several files are left alone. */
export function chosenPathEdits(
  text: string,
  pathAfter: (path: string) => string | undefined,
): readonly JsonEdit[] {
  return ['check', 'leaveOut']
    .flatMap((list) => textsAt(text, [list]))
    .flatMap(({ value, at }) => editOf(at, /[*?[\]{}!\\]/.test(value) ? undefined : pathAfter(value)));
}

function editOf(at: Span, newText: string | undefined): readonly JsonEdit[] {
  return newText === undefined ? [] : [{ at, newText: JSON.stringify(newText) }];
}

/** The text at a place, or those of the list there. */
function textsAt(text: string, path: string[]): readonly { readonly value: string; readonly at: Span }[] {
  const read = readJsonTree(text, true);
  const node = read.kind === 'value' ? findNodeAtLocation(read.tree, path) : undefined;
  const nodes = node?.type === 'array' ? (node.children ?? []) : node === undefined ? [] : [node];
  return nodes.flatMap(({ type, value, offset, length }) =>
    type === 'string' && typeof value === 'string'
      ? [{ value, at: { start: offset, end: offset + length } }]
      : [],
  );
}
