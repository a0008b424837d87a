import type { FoundParameter } from '../catalog/catalog';
import type { ScriptLine } from '../language/script-line';
import { parameterOf } from './completion-context';
import type { CompletionItem } from './completion-item';
import type { Range } from './range';
import type { Snapshot } from './snapshot';

/** What can stand as the value of a setting. */
export function valueItems(snapshot: Snapshot, line: ScriptLine, range: Range): readonly CompletionItem[] {
  const found = parameterOf(snapshot, line);
  if (found === undefined) return line.statement.kind === 'constant' ? constantItems(snapshot, range) : [];
  const { parameter } = found;
  switch (parameter.kind) {
    case 'flag':
      return [plain('on', parameter.higher, 'word', range), plain('off', parameter.lower, 'word', range)];
    case 'word':
    case 'words':
      return wordItems(snapshot, found, range);
    case 'quantity':
    case 'count':
      return [...numberItems(found, range), ...constantItems(snapshot, range)];
    case 'range':
    case 'curve':
      return [...exampleItem(found, range), ...constantItems(snapshot, range)];
    default:
      return [];
  }
}

function wordItems(snapshot: Snapshot, found: FoundParameter, range: Range): readonly CompletionItem[] {
  const { parameter } = found;
  if (parameter.kind === 'word' && parameter.permutationOf !== undefined) {
    return [
      plain(
        parameter.permutationOf,
        'Each letter once, in the order the transmitter sends them',
        'word',
        range,
      ),
    ];
  }
  const described = new Map(
    snapshot.catalog.choices(parameter).map((choice) => [choice.name, choice.summary]),
  );
  const words = snapshot.craft.words(found) ?? [...described.keys()];
  return words.map((word) => ({
    ...plain(word, described.get(word) ?? '', 'word', range),
    subject: { kind: 'choice', parameter: found.name, choice: word },
  }));
}

/** Words in place of a number, the default, and both ends of what is usual. */
function numberItems({ parameter }: FoundParameter, range: Range): readonly CompletionItem[] {
  if (parameter.kind !== 'quantity' && parameter.kind !== 'count') return [];
  const words = (parameter.orWords ?? []).map(({ name, summary }) => plain(name, summary, 'word', range));
  const [low, high] = parameter.usual;
  const assumed =
    parameter.default === null
      ? []
      : [plain(parameter.default.value, 'Assumed when not set', 'value', range)];
  const ends = [
    plain(String(low), 'Low end of what is usual', 'value', range),
    plain(String(high), 'High end of what is usual', 'value', range),
  ];
  const items = [...words, ...assumed, ...ends];
  return items.filter((item, index) => items.findIndex(({ label }) => label === item.label) === index);
}

function exampleItem({ parameter }: FoundParameter, range: Range): readonly CompletionItem[] {
  if (parameter.kind === 'range') {
    const [low, high] = parameter.usual;
    return [plain(`${low.split(' ')[0]}..${high}`, 'All of what is usual', 'value', range)];
  }
  if (parameter.kind !== 'curve') return [];
  const { across, up } = parameter;
  const text = `${across.range[0]} -> ${up.usual[0]}, ${across.range[1]} -> ${up.usual[1]}`;
  return [plain(text, 'A straight line; put points between', 'value', range)];
}

function constantItems({ craft }: Snapshot, range: Range): readonly CompletionItem[] {
  return craft.constantNames().map((name) => plain(name, 'A constant of this craft', 'constant', range));
}

function plain(label: string, detail: string, kind: CompletionItem['kind'], range: Range): CompletionItem {
  return {
    label,
    kind,
    detail,
    range,
    insertText: label,
    isSnippet: false,
    filterText: label,
    subject: { kind: 'none' },
  };
}

/** In a comment after `accept`: the risks that were found on this line. */
export function acceptanceItems(
  snapshot: Snapshot,
  line: ScriptLine,
  range: Range,
): readonly CompletionItem[] {
  const here = snapshot.findings().filter(({ place, level }) => place.line === line && level === 'risk');
  return here.map(({ check }) => ({
    label: check.id,
    kind: 'acceptance',
    detail: check.title,
    range,
    insertText: `${check.id}: `,
    isSnippet: false,
    filterText: check.id,
    subject: { kind: 'check', id: check.id },
  }));
}
