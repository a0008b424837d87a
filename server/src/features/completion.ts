import type { FoundParameter } from '../catalog/catalog';
import type { ScriptLine } from '../language/script-line';
import { findDimensionName } from '../units/dimension-names';
import { parameterOf, type TypingContext, typingContext } from './completion-context';
import type { CompletionItem } from './completion-item';
import { nameItems } from './completion-names';
import { packItems, sectionItems } from './completion-sections';
import { acceptanceItems, valueItems } from './completion-values';
import type { Position, Range } from './range';
import type { Snapshot } from './snapshot';

export interface CompletionOptions {
  /** Whether the client takes tab stops. */
  readonly snippets: boolean;
}

/** What can be written at a position, best first. Items carry the range that they replace. */
export function completion(
  snapshot: Snapshot,
  position: Position,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const line = snapshot.script.document.lineAt(position.line);
  if (line === undefined) return [];
  return itemsFor(snapshot, line, typingContext(line, position), options);
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
      return sectionItems(snapshot, context.range, context.isClosed, options);
    case 'section-pack':
      return packItems(snapshot, context.range);
    case 'value':
      return valueItems(snapshot, line, context.range);
    case 'unit':
      return unitItems(parameterOf(snapshot, line), context.range);
    case 'acceptance':
      return acceptanceItems(snapshot, line, context.range);
    case 'none':
      return [];
  }
}

/** Units that fit the parameter, the preferred one first. */
function unitItems(found: FoundParameter | undefined, range: Range): readonly CompletionItem[] {
  if (found?.dimensionName === undefined) return [];
  const { parameter } = found;
  const names = [found.dimensionName, ...(parameter.kind === 'curve' ? [parameter.across.dimension] : [])];
  const units = names.flatMap((name) => findDimensionName(name)?.units ?? []);
  const preferred = found.unit === undefined ? [] : [found.unit];
  return [...new Set([...preferred, ...units])].map((unit) => ({
    label: unit,
    kind: 'unit',
    detail: names.flatMap((name) => findDimensionName(name)?.phrase ?? [])[0] ?? '',
    range,
    insertText: unit,
    isSnippet: false,
    filterText: unit,
    subject: { kind: 'none' },
  }));
}
