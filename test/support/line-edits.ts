import fc from 'fast-check';
import type { Workspace } from '../../server/src/workspace/workspace';

/** Whole lines that are put in the place of others. */
export interface LineEdit {
  readonly at: number;
  readonly over: number;
  readonly lines: readonly string[];
}

/** The most that each part of an edit may be. */
interface Most {
  readonly at: number;
  readonly over: number;
  readonly lines: number;
}

export function lineEdits(line: fc.Arbitrary<string>, most: Most): fc.Arbitrary<LineEdit> {
  return fc.record({
    at: fc.nat(most.at),
    over: fc.nat(most.over),
    lines: fc.array(line, { maxLength: most.lines }),
  });
}

/** Makes edits of an open script one after the other, and gives each when it has been made. */
export function* edited(workspace: Workspace, uri: string, edits: readonly LineEdit[]): Iterable<LineEdit> {
  for (const [index, edit] of edits.entries()) {
    const { at, over, lines } = edit;
    const range = { start: { line: at, character: 0 }, end: { line: at + over, character: 0 } };
    workspace.change(uri, [{ ...range, text: lines.map((line) => `${line}\n`).join('') }], index + 2);
    yield edit;
  }
}
