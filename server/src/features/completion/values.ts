import { titleOf } from '../../catalog/board-title';
import type { FoundParameter } from '../../catalog/catalog';
import type { ScriptLine } from '../../language/script-line';
import type { Snapshot } from '../snapshot';
import { choicesHere, devicesOn } from './choices-here';
import { parameterOf } from './context';
import { type CompletionItem, type CompletionOptions, completionItem } from './item';
import { operandItems } from './operands';
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
      return context.isFirst ? wordItems(snapshot, found, context) : [];
    case 'words':
      return [...printedItems(snapshot, found, context), ...listItems(snapshot, found, context, snippets)];
    case 'quantity':
    case 'count':
    case 'range':
    case 'curve':
      return [...exampleItems(found, context), ...operandItems(snapshot, line, found, context, snippets)];
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

function wordItems(
  snapshot: Snapshot,
  found: FoundParameter,
  context: ValueContext,
): readonly CompletionItem[] {
  const { parameter, name } = found;
  if (parameter.kind === 'word' && parameter.permutationOf !== undefined) {
    return orders(parameter.permutationOf).map((order) => item(order, parameter.title, 'word', context));
  }
  const choices = choicesHere(snapshot, found).map((choice) => ({
    ...choice,
    taken: isPort(found) ? devicesOn(snapshot, choice.name, found.path) : [],
  }));
  const free = choices.filter(({ taken }) => taken.length === 0);
  return [...new Set([...free, ...choices])].map((choice) => ({
    ...item(
      choice.name,
      choice.taken.length === 0 ? choice.summary : `Taken by ${choice.taken.join(', ')}`,
      'word',
      context,
    ),
    subject: { kind: 'choice', parameter: name, choice: choice.name },
  }));
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
  found: FoundParameter,
  context: ValueContext,
  snippets: boolean,
): readonly CompletionItem[] {
  if (!context.isFirst && !context.isInList) return [];
  return wordItems(snapshot, found, context)
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

/** Whole values to begin with: words in place of a number, what is assumed, the ends of what is usual. */
function exampleItems({ parameter }: FoundParameter, context: ValueContext): readonly CompletionItem[] {
  const value = (text: string, detail: string) => item(text, detail, 'value', context);
  if (parameter.kind === 'range' && context.isHighEnd) {
    return [value(parameter.usual[1], 'High end of what is usual')];
  }
  if (!context.isFirst) return [];
  if (parameter.kind === 'range') {
    const [low, high] = parameter.usual;
    return [value(`${low.split(' ')[0]}..${high}`, 'All of what is usual')];
  }
  if (parameter.kind === 'curve') {
    const { across, up } = parameter;
    const text = `${across.range[0]} -> ${up.usual[0]}, ${across.range[1]} -> ${up.usual[1]}`;
    return [value(text, 'A straight line; put points between')];
  }
  if (parameter.kind !== 'quantity' && parameter.kind !== 'count') return [];
  const words = (parameter.orWords ?? []).map(({ name, summary }) => item(name, summary, 'word', context));
  const assumed =
    parameter.default === null ? [] : [value(parameter.default.value, 'Assumed when it is not set')];
  const [low, high] = parameter.usual.map(String);
  const ends = [value(low ?? '', 'Low end of what is usual'), value(high ?? '', 'High end of what is usual')];
  const all = [...words, ...assumed, ...ends];
  return all.filter(({ label }, index) => all.findIndex((other) => other.label === label) === index);
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
