import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readJson } from '../../../server/src/additions/json-text';
import { boardFile } from '../../../server/src/catalog/model/addition';
import type { BoardSetting } from '../../../server/src/catalog/model/board-text';
import type { Check } from '../../../server/src/catalog/model/check';
import type { Member } from '../../../server/src/catalog/model/collection';
import type { Board } from '../../../server/src/catalog/model/hardware';
import type { Parameter } from '../../../server/src/catalog/model/parameter';
import { findUnitSymbol } from '../../../server/src/units/unit-table';
import { shippedData } from '../catalog/shipped';

/** Parts of a line, without those that there are not. */
function line(name: string, ...parts: readonly (string | undefined)[]): string {
  const said = parts.filter((part) => part !== undefined && part !== '');
  return said.length === 0 ? name : `${name}: ${said.join(', ')}`;
}

function parameters(): readonly Parameter[] {
  return shippedData().bundle.parameters.flatMap((file) => file.parameters);
}

/** Every parameter with its numbers and its choices. */
export function parameterLines(): readonly string[] {
  return parameters().map(parameterLine);
}

function parameterLine(parameter: Parameter): string {
  return line(
    parameter.name,
    ...numbersOf(parameter),
    ...wordsOf(parameter),
    parameter.default === null ? undefined : `else ${parameter.default.value}`,
  );
}

function numbersOf(parameter: Parameter): readonly string[] {
  if ('range' in parameter) return [span(parameter.range), `usually ${span(parameter.usual)}`];
  if (parameter.kind !== 'curve') return [];
  const { across, up } = parameter;
  return [`${span(across.range)} -> ${span(up.range)}`, `usually ${span(up.usual)}`];
}

function span([low, high]: readonly [string | number, string | number]): string {
  return `${low} to ${high}`;
}

function wordsOf(parameter: Parameter): readonly string[] {
  if ('choices' in parameter && parameter.choices !== undefined)
    return [`one of ${parameter.choices.map(({ name }) => name).join(' ')}`];
  if ('orWords' in parameter && parameter.orWords !== undefined)
    return [`or ${parameter.orWords.map(({ name }) => name).join(' ')}`];
  return [];
}

/** Members of the closed collections, with what the overlay shows of them; the words that name tables' rows. */
export function memberLines(): readonly string[] {
  const { collections, links, signals, chemistries, bands, grids, regions } = shippedData().bundle;
  const members = collections.flatMap(({ path, keys }) =>
    keys.kind === 'closed' ? keys.members.map((member) => memberLine(path, member)) : [],
  );
  const sets = collections.map(({ path, placeholder, keys }) =>
    line(`${path}.<${placeholder}>`, keys.kind === 'numbers' ? `${keys.from} to ${keys.to}` : keys.kind),
  );
  const tables = Object.entries({ link: links, signal: signals, chemistry: chemistries, band: bands });
  const rows = Object.entries({ ...Object.fromEntries(tables), grid: grids, region: regions });
  return [
    ...sets,
    ...members,
    ...rows.flatMap(([table, all]) => all.map(({ name, title }) => line(`${table} ${name}`, title))),
  ];
}

function memberLine(path: string, { name, title, characters, sample }: Member): string {
  return line(
    `${path}.${name}`,
    title,
    characters === undefined ? undefined : `${characters} characters`,
    sample === undefined ? undefined : `shown as ${sample}`,
  );
}

/** Every check with all numbers that its sentences, conditions and fixes hold. */
export function checkLines(): readonly string[] {
  return checks().map((check) => line(check.id, ...numbersIn(sentencesOf(check).join(' ; '))));
}

function checks(): readonly Check[] {
  return shippedData().bundle.checks.flatMap((file) => file.checks);
}

function sentencesOf(check: Check): readonly string[] {
  const { title, message, advice } = check;
  if (check.by === 'code') return [title, message, advice, check.rule ?? ''];
  const fixes = (check.fixes ?? []).flatMap((fix) => [fix.title, fix.to]);
  return [title, message, advice, ...check.when, ...fixes];
}

/** Numbers with their units, each once, in their order. */
function numbersIn(text: string): readonly string[] {
  const found = text.matchAll(/(?<![\w.<-])(-?\d+(?:\.\d+)?)\s?(%|[a-zA-Zµ]+(?:\/[a-zA-Z]+)?)?/g);
  const numbers = [...found].map(([, number = '', word = '']) =>
    isUnit(word) ? `${number} ${word}` : number,
  );
  return [...new Set(numbers)];
}

function isUnit(word: string): boolean {
  return word !== '' && word.split('/').every((part) => findUnitSymbol(part) !== undefined);
}

/** What a thing has by the checks' sentences, such as a transmitter’s ends: parts are named there, too. */
export function belongingLines(): readonly string[] {
  const sentences = checks().flatMap((check) => sentencesOf(check));
  const found = sentences.flatMap((text) => text.match(/\b[a-z]+['’]s [a-z]+/gi) ?? []);
  return [...new Set(found.map((words) => words.toLowerCase()))].sort();
}

/** What the checks and the parameters rest on. */
export function sourceLines(): readonly string[] {
  return [...new Set([...checks(), ...parameters()].map(({ source }) => source.text))];
}

/** What people call the parameters, of the catalogue and of the boards. */
export function saidLines(): readonly string[] {
  const own = boards().flatMap((board) => board.own);
  return [...new Set([...parameters(), ...own].flatMap(({ alsoCalled }) => alsoCalled))];
}

/** The boards that ship, and the one that shows how a profile is written. */
function boards(): readonly Board[] {
  const folder = join(__dirname, '../../demo/boards');
  const shown = readdirSync(folder).map((file) => {
    const json = readJson(readFileSync(join(folder, file), 'utf8'), true);
    return boardFile.parse(json.kind === 'value' ? json.value : undefined);
  });
  return [...shippedData().bundle.boards, ...shown];
}

/** Each board's words and numbers: a line for what it has, how it writes, and each of its settings. */
export function boardLines(): readonly string[] {
  return boards().flatMap((board) => [
    ...hardwareLines(board),
    ...board.names.flatMap(({ group, settings }) =>
      settings.map((setting) => settingLine(`${board.name} ${group}`, setting)),
    ),
    ...board.own.map((parameter) => `${board.name} ${parameterLine(parameter)}`),
  ]);
}

function hardwareLines({ name, ports, rails, gyro, packInput, log, text, ...board }: Board) {
  const { dividerUpper, dividerLower, reference, mostCells } = packInput;
  return [
    line(`${name} ports`, ports.map((port) => port.name).join(' '), board.serialClock),
    line(`${name} outputs`, String(board.motorOutputs), board.motorsAsPrinted?.join(' ')),
    ...rails.map((rail) => line(`${name} ${rail.name}`, rail.voltage ?? '', rail.currentLimit ?? '')),
    line(`${name} gyro`, ...gyro.rates, gyro.fullScale),
    line(`${name} pack`, dividerUpper, dividerLower, reference, `${mostCells} cells`),
    line(`${name} log`, log?.medium ?? 'none', log?.size),
    ...Object.entries(text ?? {}).map(([part, form]) => `${name} text ${part}: ${JSON.stringify(form)}`),
  ];
}

function settingLine(where: string, setting: BoardSetting): string {
  const { parameter, names, by, at, columns, unit, scale, offset, step, limits, words, members } = setting;
  return line(
    `${where} ${parameter}`,
    names.join(' | '),
    by === 'value' ? undefined : by,
    at?.join(' '),
    columns === undefined ? undefined : `${columns} columns`,
    unit === undefined ? undefined : `in ${unit}`,
    scale === undefined ? undefined : `times ${scale}`,
    offset === undefined ? undefined : `plus ${offset}`,
    step === undefined ? undefined : `step ${step}`,
    limits === undefined ? undefined : span(limits),
    ...pairs(words),
    ...pairs(members),
  );
}

function pairs(words: Readonly<Record<string, string>> = {}): readonly string[] {
  return Object.entries(words).map(([ours, theirs]) => `${ours} = ${theirs}`);
}
