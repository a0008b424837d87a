import { lineFormOf } from '../../board/line-form';
import { type Meaning, meaningOf, meaningsOf, namesOf } from '../../board/meaning/meanings';
import { Speller } from '../../board/meaning/spelling';
import { keyOf, oneGroup } from '../../board/one-group';
import { collectionOf, membersOf } from '../../board/profile/members';
import type { Profile, RowFound } from '../../board/profile/profile';
import { fill } from '../../board/template';
import { pathOf } from '../../board/to-script';
import type { Translation } from '../../board/translation';
import type { Catalog, FoundParameter } from '../../catalog/catalog';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import type { Value } from '../../craft/value';
import { parseLine } from '../../language/parser';
import { type CompletionItem, completionItem } from '../completion/item';
import { type Position, rangeInLine } from '../range';

/** What can stand at a place of a board's text: its settings where a line begins, its words behind a name. */
export function boardCompletion(
  translation: Translation,
  catalog: Catalog,
  { line: number, character }: Position,
): readonly CompletionItem[] {
  const line = translation.lines[number];
  if (line === undefined) return [];
  const { line: read } = line;
  if (read.kind === 'setting' && character >= read.value.start) {
    return read.found === undefined ? [] : valueItems(translation, catalog, read.found, number, read.value);
  }
  if (read.kind === 'comment' || read.kind === 'closing' || read.kind === 'opening') return [];
  const start = line.text.length - line.text.trimStart().length;
  const range = rangeInLine(number, { start, end: line.text.length });
  return nameItems(translation, catalog, line.group).map(({ label, detail, insertText, parameter }) =>
    completionItem({
      label,
      kind: 'parameter',
      detail,
      range,
      insertText,
      filterText: insertText,
      subject: { kind: 'parameter', name: parameter },
    }),
  );
}

interface NameItem {
  readonly label: string;
  readonly detail: string;
  readonly insertText: string;
  readonly parameter: string;
}

/** Every setting that the text does not hold yet; under headings only those of the group. */
function nameItems({ profile, lines }: Translation, catalog: Catalog, group: string): readonly NameItem[] {
  const form = lineFormOf(profile);
  if (form === null) return [];
  const there = new Set(
    lines.flatMap(({ line }) => (line.kind === 'setting' ? [keyOf(line.group, line.name.text)] : [])),
  );
  return meaningsOf(profile).flatMap((meaning) =>
    membersHere(profile, meaning).flatMap((member) =>
      (namesOf(profile, meaning, member) ?? []).flatMap(({ groups, name }, part): NameItem[] => {
        const own = oneGroup(groups);
        const isElsewhere = form.heading !== null && group !== '' && own !== group;
        if (isElsewhere || there.has(keyOf(own, name))) return [];
        const parameter = catalog.parameter(pathOf(meaning, member));
        if (parameter === undefined) return [];
        const value = assumedText(profile, meaning, part, parameter) ?? '';
        return [
          {
            label: form.heading === null ? `${own} ${name}` : name,
            detail: parameter.parameter.title,
            insertText: fill(form.line, { group: own, name, value, index: '1' }),
            parameter: parameter.name,
          },
        ];
      }),
    ),
  );
}

function membersHere({ board }: Profile, { means }: Meaning): readonly (string | null)[] {
  const collection = collectionOf(means);
  if (collection === null || collection === 'pack') return [null];
  return [...(membersOf(board, means)?.keys() ?? [])];
}

/** The default in the board's spelling, or the middle of what is usual; null where there is neither. */
function assumedText(
  profile: Profile,
  meaning: Meaning,
  part: number,
  parameter: FoundParameter,
): string | null {
  const value = defaultOf(parameter) ?? usualOf(parameter);
  if (value === null) return null;
  const spelled = new Speller(meaning, parameter, profile.manner).write(value);
  return spelled.kind === 'texts' ? (spelled.texts[part] ?? null) : null;
}

function defaultOf(found: FoundParameter): Value | null {
  const text = found.parameter.default?.value;
  const statement = text === undefined ? null : parseLine(`value = ${text}`);
  if (statement?.kind !== 'setting' || statement.value === null) return null;
  return interpret(statement.value, found, noNames, null).value;
}

function usualOf({ parameter, usual }: FoundParameter): Value | null {
  if (usual === undefined) return null;
  const value = (usual.low + usual.high) / 2;
  if (parameter.kind === 'quantity') return { kind: 'quantity', value, unit: parameter.unit };
  return parameter.kind === 'count' ? { kind: 'count', value: Math.round(value) } : null;
}

function valueItems(
  { profile }: Translation,
  catalog: Catalog,
  found: RowFound,
  number: number,
  at: { readonly start: number; readonly end: number },
): readonly CompletionItem[] {
  const meaning = meaningOf(profile, found.row);
  const parameter = meaning === undefined ? undefined : catalog.parameter(pathOf(meaning, found.member));
  if (meaning === undefined || parameter === undefined) return [];
  const speller = new Speller(meaning, parameter, profile.manner);
  const range = rangeInLine(number, at);
  const item = (label: string, detail: string, choice: string | null) =>
    completionItem({
      label,
      kind: 'word',
      detail,
      range,
      subject: choice === null ? { kind: 'none' } : { kind: 'choice', parameter: parameter.name, choice },
    });
  const assumed = assumedText(profile, meaning, meaning.parts.indexOf(found.row), parameter);
  return [
    ...wordValues(parameter, catalog).flatMap((value) => {
      const spelled = speller.write(value);
      const word = value.kind === 'word' ? value.value : null;
      return spelled.kind === 'texts'
        ? [item(spelled.texts[0] ?? '', word ?? parameter.parameter.title, word)]
        : [];
    }),
    ...(parameter.parameter.default === null || assumed === null ? [] : [item(assumed, 'default', null)]),
  ].filter(({ label }, index, all) => all.findIndex((other) => other.label === label) === index);
}

function wordValues(found: FoundParameter, catalog: Catalog): readonly Value[] {
  const { parameter } = found;
  if (parameter.kind === 'flag') return [true, false].map((value) => ({ kind: 'flag', value }));
  const words =
    parameter.kind === 'quantity' || parameter.kind === 'count'
      ? (parameter.orWords ?? []).map(({ name }) => name)
      : (staticWords(found, catalog) ?? []);
  return words.map((value) => ({ kind: 'word', value }));
}
