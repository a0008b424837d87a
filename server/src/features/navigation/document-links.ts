import { fileName, resolveInclude } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import { namedRecordings } from '../flight/recorded';
import { type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { insideQuotes } from './value-spans';

export interface DocumentLink {
  /** The path without its quotes. */
  readonly range: Range;
  readonly target: string;
  readonly tooltip: string;
}

/** A link for every include and every recording whose path can name a file of the workspace, there or not. */
export function documentLinks(snapshot: Pick<Snapshot, 'script'>): readonly DocumentLink[] {
  const { script } = snapshot;
  const link = (range: Range, target: string) => ({ range, target, tooltip: `Open ${fileName(target)}` });
  const includes = script.lines(inputKeys.include).flatMap((line) => {
    if (line.statement.kind !== 'include') return [];
    const { path } = line.statement;
    const target = resolveInclude(script.uri, path.value);
    if (target === null) return [];
    return [link(rangeInLine(script.lineNumber(line), insideQuotes(line.text, path)), target)];
  });
  return [...includes, ...namedRecordings(snapshot).map(({ range, uri }) => link(range, uri))];
}
