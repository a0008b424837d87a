import type { BoardLayer, LayerSetting } from '../../board/layer/layer';
import { isBefore, settingAt } from '../../board/layer/places';
import { nameKey } from '../../board/listing/setting-key';
import { type Meaning, meaningOf, namesOf } from '../../board/meaning/meanings';
import { parameterPath } from '../../board/meaning/parameter-path';
import { partParameter } from '../../board/meaning/part-parameter';
import type { Spelled } from '../../board/meaning/spelled';
import { Speller } from '../../board/meaning/spelling';
import { collectionOf, membersOf } from '../../board/profile/members';
import type { Profile, ProfileRow, RowFound } from '../../board/profile/profile';
import type { Catalog, FoundParameter } from '../../catalog/catalog';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import type { Value } from '../../craft/value';
import { parseLine } from '../../language/parser';
import { type CompletionItem, completionItem } from '../completion/item';
import { type Position, rangeInLine } from '../range';
import { settingsLine } from './settings-line';

/** What can stand at a place of a board's text: its settings where a line begins, its words behind a name. */
export function boardCompletion(
  layer: BoardLayer,
  catalog: Catalog,
  place: Position,
): readonly CompletionItem[] {
  const index = settingAt(layer, place);
  const setting = layer.settings[index];
  const found = layer.lines[index]?.found;
  if (setting !== undefined && !isBefore(place, setting.at.value.start)) {
    return isBefore(setting.at.value.end, place) ? [] : valueItems(layer, catalog, setting, found);
  }
  if (layer.beside.some(({ start, end }) => start.line <= place.line && end.line >= place.line)) return [];
  const isOneOfMany = layer.settings.filter(({ at }) => at.name.start.line === place.line).length > 1;
  return isOneOfMany ? [] : nameItems(layer, catalog, place.line);
}

/** Every setting that the text does not hold yet; under headings only those of the group. */
function nameItems(layer: BoardLayer, catalog: Catalog, line: number): readonly CompletionItem[] {
  const { profile, settings, forms, texts } = layer;
  if (profile === null) return [];
  const there = new Set(settings.map(nameKey));
  const text = texts[line] ?? '';
  const range = rangeInLine(line, { start: text.length - text.trimStart().length, end: text.length });
  const group = groupAt(layer, line);
  return profile.rows.filter(isFirst).flatMap((row) =>
    membersHere(profile, row).flatMap((member): CompletionItem[] => {
      const name = boardNameOf(profile, row, member);
      const isElsewhere = group !== null && JSON.stringify(name.groups) !== JSON.stringify(group);
      if (isElsewhere || there.has(nameKey(name))) return [];
      const insertText = settingsLine(forms, name, assumed(profile, catalog, row, member));
      if (insertText === null) return [];
      const parameter = parameterOf(profile, catalog, row, member);
      return [
        completionItem({
          label: group === null ? [...name.groups, name.name].join(' ') : name.name,
          kind: 'parameter',
          detail: parameter?.parameter.title ?? row.setting.remark ?? 'the board’s own',
          range,
          insertText,
          filterText: insertText,
          ...(parameter === undefined ? {} : { subject: { kind: 'parameter', name: parameter.path } }),
        }),
      ];
    }),
  );
}

/** Of several values in one setting only the first has a name to write. */
function isFirst({ item = 1 }: ProfileRow): boolean {
  return item === 1;
}

/** The group that a line stands in; null where the board does not write settings below headings. */
function groupAt({ forms, settings, headings }: BoardLayer, line: number): readonly string[] | null {
  if (forms.headings.length === 0) return null;
  const heading = headings.findLast(({ at }) => at.start.line <= line);
  const setting = settings.findLast(({ at }) => at.name.start.line <= line);
  if (heading === undefined) return setting?.groups ?? null;
  const isBelow = setting !== undefined && setting.at.name.start.line > heading.at.start.line;
  return isBelow ? setting.groups : heading.groups;
}

function boardNameOf(profile: Profile, row: ProfileRow, member: string | null) {
  const meaning = meaningOf(profile, row);
  const names = meaning === undefined ? null : namesOf(profile, meaning, member);
  return names?.[meaning?.parts.indexOf(row) ?? 0] ?? row;
}

/** The value that a setting is offered with: that of the catalogue, or its default as the listing states it. */
function assumed(profile: Profile, catalog: Catalog, row: ProfileRow, member: string | null): string {
  const meaning = meaningOf(profile, row);
  const parameter = parameterOf(profile, catalog, row, member);
  if (meaning === undefined || parameter === undefined) return row.setting.default ?? '';
  return assumedText(profile, meaning, meaning.parts.indexOf(row), parameter) ?? '';
}

function parameterOf(
  profile: Profile,
  catalog: Catalog,
  row: ProfileRow,
  member: string | null,
): FoundParameter | undefined {
  const meaning = meaningOf(profile, row);
  return meaning === undefined ? undefined : catalog.parameter(parameterPath(meaning, member));
}

function membersHere({ board }: Profile, { setting: { means } }: ProfileRow): readonly (string | null)[] {
  const collection = means === undefined ? null : collectionOf(means);
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
  layer: BoardLayer,
  catalog: Catalog,
  setting: LayerSetting,
  found: RowFound | undefined,
): readonly CompletionItem[] {
  const { profile } = layer;
  // A number that is several settings is no word of one of them.
  if (setting.packedIn !== undefined) return [];
  const parameter =
    profile === null || found === undefined
      ? undefined
      : parameterOf(profile, catalog, found.row, found.member);
  return profile === null || found === undefined || parameter === undefined
    ? statedItems(setting, found)
    : meantItems(profile, catalog, setting, found, parameter);
}

/** What the listing or the profile states of a setting whose meaning nobody has said. */
function statedItems({ stated, at }: LayerSetting, found: RowFound | undefined): readonly CompletionItem[] {
  const row = found?.row.setting;
  const words = row?.words ?? stated?.words ?? [];
  const assumedValue = row?.default ?? stated?.default ?? null;
  const item = (label: string, detail: string) =>
    completionItem({ label, kind: 'word', detail, range: at.value, subject: { kind: 'none' } });
  return [
    ...words.map((word) => item(word, word === assumedValue ? 'default' : 'the listing states it')),
    ...(assumedValue === null || assumedValue === '' || words.includes(assumedValue)
      ? []
      : [item(assumedValue, 'default')]),
  ];
}

function meantItems(
  profile: Profile,
  catalog: Catalog,
  { at }: LayerSetting,
  { row }: RowFound,
  parameter: FoundParameter,
): readonly CompletionItem[] {
  const meaning = meaningOf(profile, row);
  if (meaning === undefined) return [];
  const speller = new Speller(meaning, parameter, profile.manner);
  const item = (label: string, detail: string, choice: string | null) =>
    completionItem({
      label,
      kind: 'word',
      detail,
      range: at.value,
      subject: choice === null ? { kind: 'none' } : { kind: 'choice', parameter: parameter.path, choice },
    });
  const part = meaning.parts.indexOf(row);
  const assumedValue = assumedText(profile, meaning, part, parameter);
  return [
    ...wordValues(partParameter(parameter, row.setting.as), catalog).flatMap((value) => {
      const spelled =
        value.kind === 'flag' ? speller.flagText(value.value, part) : firstText(speller.write(value));
      const word = wordOf(value);
      return spelled === null ? [] : [item(spelled, parameter.parameter.title, word)];
    }),
    ...(parameter.parameter.default === null || assumedValue === null
      ? []
      : [item(assumedValue, 'default', null)]),
  ].filter(({ label }, index, all) => all.findIndex((other) => other.label === label) === index);
}

function firstText(spelled: Spelled): string | null {
  return spelled.kind === 'texts' ? (spelled.texts[0] ?? null) : null;
}

/** As a script has it. */
function wordOf(value: Value): string | null {
  if (value.kind === 'flag') return value.value ? 'on' : 'off';
  return value.kind === 'word' ? value.value : null;
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
