import type { Place, Stop } from '../checks/report/finding';
import type { Script } from '../craft/script';
import type { Position } from '../language/document';
import type { ScriptLine } from '../language/script-line';

export type { Position } from '../language/document';

/** 0-based, in UTF-16 units: the edge converts to the client's encoding. */
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** A range in one of the workspace's scripts. */
export interface Location {
  readonly uri: string;
  readonly range: Range;
}

export interface TextEdit {
  readonly range: Range;
  readonly newText: string;
  /** Parts of the new text to type over, in order. */
  readonly stops?: readonly Stop[];
}

export function rangeInLine(
  line: number,
  { start, end }: { readonly start: number; readonly end: number },
): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}

export function rangeOf({ script, line, start, end }: Place): Range {
  return rangeInLine(script.lineNumber(line), { start, end });
}

export function locationOf(place: Place): Location {
  return { uri: place.script.uri, range: rangeOf(place) };
}

/** The place of a whole line, without its end. */
export function lineRange(script: Script, line: ScriptLine): Range {
  return rangeInLine(script.lineNumber(line), { start: 0, end: line.text.length });
}
