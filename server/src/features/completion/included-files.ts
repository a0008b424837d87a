import { relativeInclude } from '../../craft/include-path';
import { type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { type CompletionItem, completionItem } from './item';

/** The path of an include, with its quotes as far as they stand there. */
export interface IncludedFileContext {
  readonly kind: 'included-file';
  readonly range: Range;
}

/** Null where the cursor is not behind `include`. A path that is not closed yet goes to the line's end. */
export function includedFileContext(
  said: string,
  line: number,
  character: number,
): IncludedFileContext | null {
  const [, opened] = /^(\s*include\s+)(?:$|")/.exec(said) ?? [];
  if (opened === undefined || character < opened.length) return null;
  const [path = ''] = /^"[^"]*"?/.exec(said.slice(opened.length)) ?? [];
  const end = opened.length + path.length;
  return character > end
    ? null
    : { kind: 'included-file', range: rangeInLine(line, { start: opened.length, end }) };
}

/** Scripts of the workspace that are no part of the craft yet, the nearest first. */
export function includedFileItems(
  { script, others }: Snapshot,
  { range }: IncludedFileContext,
): readonly CompletionItem[] {
  const paths = others().flatMap(({ uri }) => relativeInclude(script.uri, uri) ?? []);
  // A text has no way to write its own quote.
  const steps = (path: string) => path.split('/').length;
  return paths
    .filter((path) => !path.includes('"'))
    .sort((one, other) => steps(one) - steps(other) || one.localeCompare(other, 'en'))
    .map((path) =>
      completionItem({
        label: path,
        kind: 'file',
        detail: 'A script of this workspace',
        range,
        insertText: `"${path}"`,
        filterText: `"${path}"`,
      }),
    );
}
