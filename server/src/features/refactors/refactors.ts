import type { Range } from '../range';
import type { Snapshot } from '../snapshot';
import { convertUnit } from './convert-unit';
import { extractConstant } from './extract-constant';
import { moveUnderPack } from './move-under-pack';
import type { Refactor } from './refactor';

/** What can be written otherwise at a cursor or a selection, which lies in one line. */
export function refactorsAt(snapshot: Snapshot, { start, end }: Range): readonly Refactor[] {
  const line = snapshot.script.document.lineAt(start.line);
  if (line === undefined || start.line !== end.line) return [];
  const at = { start: start.character, end: end.character };
  return [
    ...extractConstant(snapshot, line, at),
    ...convertUnit(snapshot, line, at),
    ...moveUnderPack(snapshot, line, at),
  ];
}
