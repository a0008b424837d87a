import { titleOf } from '../../catalog/board-title';
import type { FoundParameter } from '../../catalog/catalog';
import type { ScriptLine } from '../../language/script-line';
import type { Snapshot } from '../snapshot';
import { choicesHere, devicesOn, likelyChoices } from './choices-here';
import { parameterOf } from './context';
import { type CompletionItem, type CompletionOptions, completionItem, snippetText } from './item';
import { operandItems } from './operands';
import { valueProposals } from './proposals';
import { type UsedValue, usedValues } from './used-values';
import type { ValueContext } from './value-context';

/** What can stand in the value of a setting or a constant. */
export function valueItems(
  snapshot: Snapshot,
  line: ScriptLine,
  context: ValueContext,
  { snippets }: CompletionOptions,
): readonly CompletionItem[] {
  const found = parameterOf(snapshot, line);
  if (found === undefined) {
    return line.statement.kind === 'constant'
      ? operandItems(snapshot, line, undefined, context, snippets)
      : [];
  }
  const { parameter } = found;
  switch (parameter.kind) {
    case 'flag':
      return context.isFirst ? flagItems(found, context) : [];
    case 'word':
      return context.isFirst ? wordItems(snapshot, line, found, context) : [];
    case 'words':
      return [
        ...printedItems(snapshot, found, context),
        ...(context.isFirst ? wholeValueItems(snapshot, line, found, context) : []),
        ...listItems(snapshot, line, found, context, snippets),
      ];
    case 'place':
      return context.isFirst ? wholeValueItems(snapshot, line, found, context) : [];
    case 'quantity':
    case 'count':
    case 'range':
    case 'curve':
      return [
        ...exampleItems(snapshot, line, found, context, snippets),
        ...operandItems(snapshot, line, found, context, snippets),
      ];
    default:
      return [];
  }
}

function flagItems({ name }: FoundParameter, context: ValueContext): readonly CompletionItem[] {
  return ['on', 'off'].map((word) => ({
    ...item(word, '', 'word', context),
    subject: { kind: 'choice', parameter: name, choice: word },
  }));
}

/** Free ones before those that are taken; what is common and what other scripts have before the rest. */
function wordItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter,
  context: ValueContext,
): readonly CompletionItem[] {
  const { parameter, name } = found;
  const isOrder = parameter.kind === 'word' && parameter.permutationOf !== undefined;
  const first = parameter.kind === 'word' ? wholeValueItems(snapshot, line, found, context) : [];
  const likely = new Map(first.map(({ label, detail }) => [label, detail]));
  if (isOrder) {
    const all = orders(parameter.permutationOf ?? '').map((order) =>
      item(order, parameter.title, 'word', context),
    );
    return likelyFirst(all, likely);
  }
  const choices = likelyChoices(snapshot, found).map((choice) => ({
    ...choice,
    taken: isPort(found) ? devicesOn(snapshot, choice.name, found.path) : [],
  }));
  const free = choices.filter(({ taken }) => taken.length === 0);
  const items = (list: typeof choices) =>
    list.map(
      (choice): CompletionItem => ({
        ...item(
          choice.name,
          choice.taken.length === 0 ? choice.summary : `Taken by ${choice.taken.join(', ')}`,
          'word',
          context,
        ),
        subject: { kind: 'choice', parameter: name, choice: choice.name },
      }),
    );
  const taken = choices.filter((choice) => !free.includes(choice));
  return [...likelyFirst(items(free), likely), ...items(taken)];
}

/** `likely`: words with why, best first. */
function likelyFirst(
  items: readonly CompletionItem[],
  likely: ReadonlyMap<string, string>,
): readonly CompletionItem[] {
  const first = [...likely].flatMap(([word, why]) =>
    items.filter(({ label }) => label === word).map((one) => hinted({ ...one, detail: why })),
  );
  return [...first, ...items.filter(({ label }) => !likely.has(label))];
}

function isPort({ parameter }: FoundParameter): boolean {
  return parameter.kind === 'word' && parameter.choicesFrom === 'ports';
}

/** Every order of a few letters, the given one first. */
function orders(letters: string): readonly string[] {
  if (letters.length < 2) return [letters];
  return [...letters].flatMap((letter, index) =>
    orders(letters.slice(0, index) + letters.slice(index + 1)).map((rest) => letter + rest),
  );
}

/** Words that are not in the list yet; the first one brings the brackets, and the cursor stays inside them. */
function listItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter,
  context: ValueContext,
  snippets: boolean,
): readonly CompletionItem[] {
  if (!context.isFirst && !context.isInList) return [];
  return wordItems(snapshot, line, found, context)
    .filter(({ label }) => !context.otherNames.includes(label))
    .map((word) => {
      if (context.isInList) return word;
      const text = `${context.lead}[${word.label}`;
      return { ...word, insertText: snippets ? `${text}$0]` : `${text}]`, isSnippet: snippets };
    });
}

/** The motors in the order of the board's own drawing, where the craft has such motors. */
function printedItems(
  snapshot: Snapshot,
  found: FoundParameter,
  context: ValueContext,
): readonly CompletionItem[] {
  const board = snapshot.craft.board();
  const printed = board?.hardware?.motorsAsPrinted;
  if (found.name !== 'motor.order' || !context.isFirst || !board || !printed) return [];
  const here = choicesHere(snapshot, found).map(({ name }) => name);
  if (!printed.every((name) => here.includes(name))) return [];
  return [item(`[${printed.join(', ')}]`, `As drawn for ${titleOf(board)}`, 'value', context)];
}

/**
 * Whole values to begin with: what is common, what other scripts have, words in place of a number. Where no number is
 * common, a place for one with its unit, and why.
 */
function exampleItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter,
  context: ValueContext,
  snippets: boolean,
): readonly CompletionItem[] {
  const { parameter } = found;
  if (parameter.kind === 'range' && context.isHighEnd) return highEndItems(snapshot, line, found, context);
  if (!context.isFirst) return [];
  const words = 'orWords' in parameter ? (parameter.orWords ?? []) : [];
  const values = wholeValueItems(snapshot, line, found, context);
  const rest = words.map(({ name, summary }) => item(name, summary, 'word', context));
  const all = [...values, ...rest];
  const none = snapshot.catalog.commonValues.get(found.name)?.none;
  const place = none === undefined || !snippets || values.length > 0 ? [] : placeItems(found, none, context);
  return [
    ...all.filter(({ label }, index) => all.findIndex((other) => other.label === label) === index),
    ...place,
  ];
}

/** Common values, and those of other scripts with where they stand. */
function wholeValueItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter,
  context: ValueContext,
): readonly CompletionItem[] {
  const used = usedValues(snapshot, found);
  const common = valueProposals(snapshot.craft, found, line.section.pack);
  const isNew = ({ value }: UsedValue) => common.every((one) => one.value !== value);
  const also = new Map(used.map(({ value, where }) => [value, where]));
  return [
    ...common.map(({ value, why }) => {
      const where = also.get(value);
      return hinted(item(value, where === undefined ? why : `${why}; also in ${where}`, 'value', context));
    }),
    ...used.filter(isNew).map(({ value, where }) => hinted(item(value, `as in ${where}`, 'value', context))),
  ];
}

/** The upper ends of common ranges that begin at the low end that stands there. */
function highEndItems(
  snapshot: Snapshot,
  line: ScriptLine,
  found: FoundParameter,
  context: ValueContext,
): readonly CompletionItem[] {
  const before = line.text.slice(0, context.range.start.character);
  const typed = before.slice(before.indexOf('=') + 1, before.lastIndexOf('..')).trim();
  return valueProposals(snapshot.craft, found, line.section.pack).flatMap(({ value, why }) => {
    const [low, high = ''] = value.split('..');
    return low === typed ? [hinted(item(high, why, 'value', context))] : [];
  });
}

/** A place for a number before its unit; the rest of the line says why there is none. */
function placeItems({ unit }: FoundParameter, why: string, context: ValueContext): readonly CompletionItem[] {
  const { start, end } = context.valueRange;
  if (unit === undefined || unit === '' || start.character !== end.character) return [];
  const open = item(`… ${unit}`, why, 'value', context);
  return [hinted({ ...open, insertText: `${context.lead}$1 ${snippetText(unit)}`, isSnippet: true })];
}

function hinted(one: CompletionItem): CompletionItem {
  return { ...one, isHint: true };
}

/** In a list one item is replaced, elsewhere the whole value: a part of another one would be left beside it. */
function item(
  label: string,
  detail: string,
  kind: CompletionItem['kind'],
  { range, valueRange, lead, isInList, isHighEnd }: ValueContext,
): CompletionItem {
  return completionItem({
    label,
    kind,
    detail,
    range: isInList || isHighEnd ? range : valueRange,
    insertText: `${lead}${label}`,
    filterText: label,
  });
}
