import type { FoundParameter } from '../../catalog/catalog';
import { functions } from '../../craft/functions';
import { inputKeys } from '../../craft/keys';
import type { ScriptLine } from '../../language/script-line';
import { plain } from '../../units/dimension';
import { findDimensionName } from '../../units/dimension-names';
import { evaluatedText } from '../hover/quantity-text';
import type { Snapshot } from '../snapshot';
import { type CompletionItem, completionItem, tabStop } from './item';
import type { ValueContext } from './value-context';

/** What an expression can be made of: constants, the fitting ones first, other parameters, functions. */
export function operandItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter | undefined,
  context: ValueContext,
  snippets: boolean,
): readonly CompletionItem[] {
  const parameters = context.typed.includes('.') ? parameterItems(snapshot, line, context) : [];
  return [
    ...parameters,
    ...constantItems(snapshot, line, found, context),
    ...(context.typed === '' ? [] : functionItems(context, snippets)),
  ];
}

function constantItems(
  { craft, pack: inView }: Snapshot,
  { statement, section }: ScriptLine,
  found: FoundParameter | undefined,
  { range, lead }: ValueContext,
): readonly CompletionItem[] {
  const wanted = dimensionKey(found);
  const own = statement.kind === 'constant' ? statement.name.text : null;
  const items = craft
    .constantNames()
    .filter((name) => name !== own)
    .map((name) => {
      const result = craft.constant(name, section.pack ?? inView);
      const value = result.kind === 'value' ? result.value : null;
      const detail = value === null ? 'A constant of this craft' : `= ${evaluatedText(value)}`;
      const fits = wanted === null || value?.dimension.key === wanted;
      const item = completionItem({ label: name, kind: 'constant', detail, range, insertText: lead + name });
      return { fits, item };
    });
  return [...items.filter(({ fits }) => fits), ...items.filter(({ fits }) => !fits)].map(({ item }) => item);
}

function dimensionKey(found: FoundParameter | undefined): string | null {
  if (found === undefined) return null;
  if (found.dimensionName === undefined) return plain.key;
  return findDimensionName(found.dimensionName)?.dimension.key ?? null;
}

/** Quantities and counts that the craft sets. */
function parameterItems(
  { catalog, craft }: Snapshot,
  { settingPath }: ScriptLine,
  { range, lead }: ValueContext,
): readonly CompletionItem[] {
  return [...catalog.parameters.values()].flatMap(({ name, parameter }) => {
    const isNumber = parameter.kind === 'quantity' || parameter.kind === 'count';
    const isSet = craft.lines(inputKeys.setting(name)).length > 0;
    if (!isNumber || !isSet || name === settingPath) return [];
    const detail = parameter.title;
    return [completionItem({ label: name, kind: 'parameter', detail, range, insertText: lead + name })];
  });
}

/** Where a function is called already, its name alone is replaced. What it takes is typed over, or typed next. */
function functionItems(
  { nameRange, isCalled, lead }: ValueContext,
  snippets: boolean,
): readonly CompletionItem[] {
  const isSnippet = snippets && !isCalled;
  return [...functions].map(([name, { takes, names }]) => {
    const stops = names.map((text, index) => tabStop(index + 1, text)).join(', ');
    return completionItem({
      label: name,
      kind: 'keyword',
      detail: `Takes ${takes}`,
      range: nameRange,
      insertText: `${lead}${name}${isSnippet ? `(${stops})` : ''}`,
      isSnippet,
    });
  });
}
