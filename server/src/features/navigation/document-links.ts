import { fileName, resolveInclude } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import { type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { insideQuotes } from './value-spans';

export interface DocumentLink {
  /** The path without its quotes. */
  readonly range: Range;
  readonly target: string;
  readonly tooltip: string;
}

/** A link for every include whose path can name a script of the workspace, whether it is there or not. */
export function documentLinks({ script }: Pick<Snapshot, 'script'>): readonly DocumentLink[] {
  return script.lines(inputKeys.include).flatMap((line) => {
    if (line.statement.kind !== 'include') return [];
    const { path } = line.statement;
    const target = resolveInclude(script.uri, path.value);
    if (target === null) return [];
    const range = rangeInLine(script.lineNumber(line), insideQuotes(line.text, path));
    return [{ range, target, tooltip: `Open ${fileName(target)}` }];
  });
}
