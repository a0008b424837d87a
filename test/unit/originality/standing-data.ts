import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readJsonTree } from '../../../server/src/additions/json-text';
import { gather, type Meaning } from '../../../server/src/board/meaning/meanings';
import { rowsOf } from '../../../server/src/board/profile/profile';
import { boardFile } from '../../../server/src/catalog/model/addition';
import type { BoardProfile, BoardSetting } from '../../../server/src/catalog/model/board-profile';
import type { Check } from '../../../server/src/catalog/model/check';
import type { Member } from '../../../server/src/catalog/model/collection';
import type { CheckFix } from '../../../server/src/catalog/model/fix';
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

/** Every value that completion proposes as common, the parts that it writes as a whole, what is usual for a size. */
export function commonValueLines(): readonly string[] {
  const { common, parts, sizes } = shippedData().bundle;
  return [
    ...common.flatMap(({ of, values = [] }) =>
      of.map((name) => line(`${name} commonly`, ...values.map(({ value }) => value))),
    ),
    ...parts.map(({ title, words, lines }) => line(title, ...words, ...lines)),
    ...sizes.map(({ title, ...usual }) => line(title, ...Object.values(usual).map(String))),
  ];
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
  const rule = check.by === 'code' ? [check.rule ?? ''] : check.when;
  return [title, message, advice, ...rule, ...(check.fixes ?? []).flatMap(textsOf)];
}

function textsOf(fix: CheckFix): readonly string[] {
  if ('remove' in fix) return [fix.title];
  return [fix.title, ...[fix, ...(fix.also ?? [])].map(({ to }) => to)];
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

/** What people call the parameters. */
export function saidLines(): readonly string[] {
  return [...new Set(parameters().flatMap(({ alsoCalled }) => alsoCalled))];
}

/** By which words a board's settings are known: a line for each concept, and one for each parameter. */
export function tradeWordLines(): readonly string[] {
  const { concepts, said } = shippedData().bundle.tradeWords;
  return [
    ...concepts.map(({ concept, words, short = [] }) =>
      line(concept, ...Object.values(words).flat(), ...short),
    ),
    ...Object.entries(said).map(([name, phrases]) => line(name, ...phrases)),
  ];
}

/** By which words and sizes the columns of a recording are known: a line for each kind, unit and scale. */
export function recordingLines(): readonly string[] {
  const { kinds, axes, units, fulls } = shippedData().bundle.recordings;
  return [
    ...kinds.map(({ kind, words, weak, with: beside, without, ways, sizes }) =>
      line(
        kind,
        ...words,
        ...weak,
        beside.length === 0 ? undefined : `beside ${beside.join(' ')}`,
        without.length === 0 ? undefined : `without ${without.join(' ')}`,
        ...ways.map(({ unit, scale }) => `${scale} ${unit}`.trim()),
        sizes === undefined ? undefined : span(sizes),
      ),
    ),
    ...Object.entries(axes).map(([axis, words]) => line(axis, ...words)),
    ...units.map(({ unit, said }) => line(unit, ...said)),
    ...fulls.map(({ full, idle, what }) => line(what, `${idle} to ${full}`)),
  ];
}

/** The boards that ship, and the one that shows how a profile is written. */
function boards(): readonly BoardProfile[] {
  const folder = join(__dirname, '../../demo/boards');
  const shown = readdirSync(folder).map((file) => {
    const json = readJsonTree(readFileSync(join(folder, file), 'utf8'), true);
    return boardFile.parse(json.kind === 'value' ? json.value : undefined);
  });
  return [...shippedData().bundle.boards, ...shown];
}

/** Each board's words and numbers: a line for what it has, how it writes, and each of its settings. */
export function boardLines(): readonly string[] {
  return boards().flatMap((board) => [
    ...hardwareLines(board),
    ...textLines(board),
    ...gather(rowsOf(board)).map((meaning) => meaningLine(board.name, meaning)),
    ...board.settings
      .filter(({ means }) => means === undefined)
      .map((setting) => ownLine(board.name, setting)),
  ]);
}

function hardwareLines({ name, hardware = {} }: BoardProfile): readonly string[] {
  const { ports = [], rails = [], gyro, packInput, log } = hardware;
  return [
    line(`${name} ports`, ports.map((port) => port.name).join(' '), hardware.serialClock),
    line(`${name} outputs`, String(hardware.motorOutputs), hardware.motorsAsPrinted?.join(' ')),
    ...rails.map((rail) => line(`${name} ${rail.name}`, rail.voltage ?? '', rail.currentLimit ?? '')),
    line(`${name} gyro`, ...(gyro?.rates ?? []), gyro?.fullScale),
    line(
      `${name} pack`,
      packInput?.dividerUpper,
      packInput?.dividerLower,
      packInput?.reference,
      `${packInput?.mostCells} cells`,
    ),
    line(`${name} log`, log?.medium ?? 'none', log?.size),
  ];
}

function textLines({ name, text, members = {} }: BoardProfile): readonly string[] {
  const { forms, ...others } = text ?? {};
  return [
    ...Object.entries({ ...forms, ...others }).map(
      ([part, form]) => `${name} text ${part}: ${JSON.stringify(form)}`,
    ),
    ...Object.entries(members).map(([collection, table]) =>
      line(`${name} members of ${collection}`, ...pairs(table)),
    ),
  ];
}

function meaningLine(board: string, { means, by, parts }: Meaning): string {
  const { counts = {}, spelled, as, group = [] } = parts[0]?.setting ?? {};
  const { unit, scale, offset, step, limits } = counts;
  const points = parts.flatMap(({ setting }) =>
    typeof setting.as === 'object' && 'at' in setting.as ? [setting.as.at] : [],
  );
  return line(
    [board, ...[group].flat(), means].join(' '),
    parts.map(({ name }) => name).join(' | '),
    by === 'value' ? undefined : by,
    points.join(' '),
    typeof as === 'object' && 'cell' in as ? `${as.cell} columns` : undefined,
    unit === undefined ? undefined : `in ${unit}`,
    scale === undefined ? undefined : `times ${scale}`,
    offset === undefined ? undefined : `plus ${offset}`,
    step === undefined ? undefined : `step ${step}`,
    limits === undefined ? undefined : span(limits),
    ...pairs(spelled),
  );
}

function ownLine(
  board: string,
  { group = [], name, range, words, default: usual, unit }: BoardSetting,
): string {
  return line(
    [board, ...[group].flat(), name].join(' '),
    range === undefined ? undefined : span(range),
    words?.join(' '),
    unit === undefined ? undefined : `in ${unit}`,
    usual === undefined ? undefined : `else ${usual}`,
  );
}

function pairs(words: Readonly<Record<string, string>> = {}): readonly string[] {
  return Object.entries(words).map(([ours, theirs]) => `${ours} = ${theirs}`);
}
