import type { Document } from '../../language/document';
import type { Snapshot } from '../snapshot';
import { isCommentLine, sectionExtents } from './section-extents';

/** Lines that fold away below their first one; 0-based, both included, the last after the first. */
export interface FoldingRange {
  readonly first: number;
  readonly last: number;
  readonly kind: 'section' | 'comment';
}

/** Sections fold to their last line that says something; runs of comment lines fold as comments. */
export function foldingRanges({ script }: Pick<Snapshot, 'script'>): readonly FoldingRange[] {
  const sections = sectionExtents(script.document).map(({ first, last }) => ({
    first,
    last,
    kind: 'section' as const,
  }));
  return [...sections, ...commentRuns(script.document)]
    .filter(({ first, last }) => last > first)
    .sort((one, other) => one.first - other.first);
}

function commentRuns(document: Document): readonly FoldingRange[] {
  const runs: FoldingRange[] = [];
  let first = -1;
  let number = 0;
  const close = () => {
    if (first >= 0) runs.push({ first, last: number - 1, kind: 'comment' });
    first = -1;
  };
  for (const line of document.lines()) {
    if (!isCommentLine(line)) close();
    else if (first < 0) first = number;
    number += 1;
  }
  close();
  return runs;
}
