import type { NameFound, Profile } from '../../board/profile';
import { namesOf } from '../../board/profile';
import { Speller } from '../../board/spelling';
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
  const there = new Set(
    lines.flatMap(({ line }) => (line.kind === 'setting' ? [`${line.group}\n${line.name.text}`] : [])),
  );
  const groups = profile.groups.filter(
    (one) => profile.heading === null || group === '' || one.group === group,
  );
  return groups.flatMap(({ group: inGroup, settings }) =>
    settings.flatMap((row) => {
      const members =
        row.parameter.includes('<') && !row.parameter.startsWith('pack.')
          ? Object.keys(row.members ?? {})
          : [null];
      return members.flatMap((member) =>
        (namesOf(row, inGroup, member) ?? []).flatMap(({ group: own, name }, part): NameItem[] => {
          if (there.has(`${own}\n${name}`)) return [];
          const found = { group: own, name, row, part, member };
          const parameter = catalog.parameter(pathOf(found));
          if (parameter === undefined) return [];
          const value = assumedText(profile, found, parameter) ?? '';
          return [
            {
              label: profile.heading === null ? `${own} ${name}` : name,
              detail: parameter.parameter.title,
              insertText: fill(profile.line, { group: own, name, value, index: '1' }),
              parameter: parameter.name,
            },
          ];
        }),
      );
    }),
  );
}

/** The default in the board's spelling, or the middle of what is usual; null where there is neither. */
function assumedText(profile: Profile, found: NameFound, parameter: FoundParameter): string | null {
  const value = defaultOf(parameter) ?? usualOf(parameter);
  if (value === null) return null;
  const spelled = new Speller(found.row, parameter, profile.text).write(value);
  return spelled.kind === 'texts' ? (spelled.texts[found.part] ?? null) : null;
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
  found: NameFound,
  number: number,
  at: { readonly start: number; readonly end: number },
): readonly CompletionItem[] {
  const parameter = catalog.parameter(pathOf(found));
  if (parameter === undefined) return [];
  const speller = new Speller(found.row, parameter, profile.text);
  const range = rangeInLine(number, at);
  const item = (label: string, detail: string, choice: string | null) =>
    completionItem({
      label,
      kind: 'word',
      detail,
      range,
      subject: choice === null ? { kind: 'none' } : { kind: 'choice', parameter: parameter.name, choice },
    });
  const assumed = assumedText(profile, found, parameter);
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
