import { completion } from '../../server/src/features/completion/completion';
import type { CompletionItem } from '../../server/src/features/completion/item';
import { snapshotOf } from './snapshot';

/** What is offered at the mark in a script. */
export function offered(
  marked: string,
  files: Readonly<Record<string, string>> = {},
): readonly CompletionItem[] {
  const { snapshot, position } = snapshotOf(marked, files);
  return completion(snapshot, position, { snippets: true, trigger: null }).items;
}

/** Whole values that are offered behind `path =`, without places to fill in. */
export function values(path: string, before = ''): readonly string[] {
  return offered(`${before}${path} = |`)
    .filter(({ kind, isSnippet }) => kind === 'value' && !isSnippet)
    .map(({ label }) => label);
}
