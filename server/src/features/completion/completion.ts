import type { ScriptLine } from '../../language/script-line';
import type { Position } from '../range';
import type { Snapshot } from '../snapshot';
import { acceptanceItems } from './acceptances';
import { type TypingContext, typingContext } from './context';
import { includedFileItems } from './included-files';
import type { CompletionItem, CompletionOptions } from './item';
import { nameItems } from './names';
import { mostNames, ownNameItems, ownValueItems } from './own';
import { packItems, sectionHeaderItems, sectionItems } from './sections';
import { shortestSynonym } from './synonyms';
import { unitItems } from './units';
import { valueItems } from './values';

export interface Completion {
  /** Best first. Each carries the range that it replaces. */
  readonly items: readonly CompletionItem[];
  /** Whether more typing may bring items that are not in the list yet. */
  readonly isIncomplete: boolean;
}

/** What can be written at a position. */
export function completion(snapshot: Snapshot, position: Position, options: CompletionOptions): Completion {
  const line = snapshot.script.document.lineAt(position.line);
  if (line === undefined) return { items: [], isIncomplete: false };
  const context = typingContext(line, position);
  const items = isUnasked(line, context, options) ? [] : itemsFor(snapshot, line, context, options);
  return { items, isIncomplete: hasMore(context, items) };
}

function hasMore(context: TypingContext, items: readonly CompletionItem[]): boolean {
  switch (context.kind) {
    case 'own-name':
      return items.length >= mostNames;
    case 'name':
      return context.typed.length < shortestSynonym;
    default:
      // Scripts around are still being read when they are first asked for.
      return context.kind === 'included-file';
  }
}

/** A blank indents, ends a word or begins prose far more often than it asks: a list would catch the next Enter. */
function isUnasked(line: ScriptLine, context: TypingContext, { trigger }: CompletionOptions): boolean {
  // A quote opens texts of all kinds, and only a file's is known.
  if (trigger === '"') return context.kind !== 'included-file';
  if (trigger !== ' ') return false;
  if (context.kind === 'name' || context.kind === 'own-name') return true;
  if (context.kind === 'acceptance') return context.lead !== '';
  return context.kind === 'unit' && line.statement.kind === 'constant';
}

function itemsFor(
  snapshot: Snapshot,
  line: ScriptLine,
  context: TypingContext,
  options: CompletionOptions,
): readonly CompletionItem[] {
  switch (context.kind) {
    case 'name':
      return nameItems(snapshot, line, context, options);
    case 'section':
      return sectionItems(snapshot, line, context, options);
    case 'section-pack':
      return packItems(snapshot, line, context);
    case 'value':
      return valueItems(snapshot, line, context, options);
    case 'unit':
      return unitItems(snapshot, line, context);
    case 'included-file':
      return includedFileItems(snapshot, context);
    case 'acceptance':
      return acceptanceItems(snapshot, line, context);
    case 'own-name':
      return [
        ...ownNameItems(snapshot, line, context, options),
        ...(context.isAlone ? sectionHeaderItems(snapshot, context.range, options) : []),
      ];
    case 'own-value':
      return ownValueItems(snapshot, line, context);
    case 'none':
      return [];
  }
}
