import type { Catalog, FoundParameter } from '../../catalog/catalog';
import { type Flown, readFlown } from '../../catalog/model/flown';
import { sentenceOf } from '../../checks/report/render';
import { lastSettingUnder } from '../../checks/report/rule-fix';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import type { Script } from '../../craft/script';
import { CraftView } from '../../craft/view';
import type { DocumentEdit } from '../../language/document';
import { parseLine } from '../../language/parser';
import { quoted } from '../../language/quoted-text';
import { withUnit } from '../../units/number-text';
import type { Snapshot } from '../snapshot';

/** A question about a flight; each may be left unanswered. */
export interface FlightQuestion {
  /** `motor-temperature` */
  readonly setting: string;
  readonly title: string;
  /** What an answer looks like: `54 degC`. */
  readonly example: string;
}

/** What is asked about a flight, and what is known already. */
export interface FlightForm {
  /** Free in this script. */
  readonly name: string;
  readonly packs: readonly string[];
  readonly packInView: string | null;
  readonly questions: readonly FlightQuestion[];
  /** What changed since the last noted flight; empty where nothing did, or nothing is known. */
  readonly changed: string;
  /** Whether there was a record that could not be read. */
  readonly isRecordBroken: boolean;
}

export interface FlightAnswer {
  readonly setting: string;
  /** As typed: a number may lack its unit, a text its quotes. */
  readonly typed: string;
}

const asked: readonly (readonly [setting: string, example: string])[] = [
  ['packs-flown', '3'],
  ['minutes', '4.5 min'],
  ['air-temperature', '18 degC'],
  ['motor-temperature', '54 degC'],
  ['rest-cell', '3.6 V'],
  ['hover-throttle', '31 %'],
  ['note', 'tail wobbles leaving the third tree'],
];

/** `record`: what was kept at the last noted flight, as text; `today`: 2026-05-14. */
export function flightForm(snapshot: Snapshot, record: string | null, today: string): FlightForm {
  const { craft, catalog, pack } = snapshot;
  const last = record === null ? null : readFlown(record);
  const questions = asked.flatMap(([setting, example]): readonly FlightQuestion[] => {
    const found = flightParameter(catalog, setting);
    return found === undefined ? [] : [{ setting, title: found.parameter.title, example }];
  });
  return {
    name: freeName(craft.members('flight'), `day-${today}`),
    packs: craft.packs(),
    packInView: pack,
    questions,
    changed: last === null ? '' : changedText(new CraftView(craft, last.pack ?? pack), last),
    isRecordBroken: record !== null && last === null,
  };
}

/** Why an answer can't be written, as the script would say it; null if it can. */
export function answerFault(catalog: Catalog, { setting, typed }: FlightAnswer): string | null {
  const example = asked.find(([name]) => name === setting)?.[1];
  return valueFault(catalog, flightPath(setting), typed, setting, example);
}

/** The same of any setting, a bare number in its parameter's unit. `name`: what it is called. */
export function valueFault(
  catalog: Catalog,
  path: string,
  typed: string,
  name = path,
  example?: string,
): string | null {
  const found = catalog.parameter(path);
  if (found === undefined) return `There is no ${path.replace('.any.', '.<name>.')}.`;
  const statement = parseLine(`answer = ${asWritten(found, typed)}`);
  if (statement.kind !== 'setting' || statement.value === null) return 'A value of one line is wanted.';
  const { value, problems } = interpret(statement.value, found, noNames, staticWords(found, catalog));
  for (const { id, values } of [...statement.problems, ...problems]) {
    const check = catalog.check(id);
    if (check?.level === 'must-fix') return sentenceOf(check.message, { name, ...values });
  }
  if (value !== null) return null;
  return example === undefined ? 'No such value is known.' : `A value such as ${example} is wanted.`;
}

/** What a section of the script says of a flight. */
export interface FlightSection {
  readonly name: string;
  readonly answers: readonly FlightAnswer[];
  /** What no setting holds: a comment each, below the settings. */
  readonly comments?: readonly string[];
}

/** Adds the sections of flights, after the last one or at the end. Answers must be without fault. */
export function flightEdit(
  { script, catalog }: Pick<Snapshot, 'script' | 'catalog'>,
  flights: readonly FlightSection[],
): DocumentEdit {
  const end = script.document.lineEnd;
  return added(script, flights.map((flight) => sectionText(flight, catalog, end)).join(`${end}${end}`));
}

function sectionText(
  { name, answers, comments = [] }: FlightSection,
  catalog: Catalog,
  lineEnd: string,
): string {
  const rows = answers.flatMap(({ setting, typed }): readonly (readonly [string, string])[] => {
    const found = flightParameter(catalog, setting);
    return found === undefined ? [] : [[setting, asWritten(found, typed)]];
  });
  const width = Math.max(0, ...rows.map(([setting]) => setting.length));
  const lines = [
    `[flight.${name}]`,
    ...rows.map(([setting, value]) => `${setting.padEnd(width)} = ${value}`),
    ...comments.map((comment) => `# ${onOneLine(comment)}`),
  ];
  return lines.join(lineEnd);
}

/** What is kept until the next flight. */
export function flownRecord({ craft }: Pick<Snapshot, 'craft'>, flight: string, pack: string | null): Flown {
  const view = new CraftView(craft, pack);
  const settings = craft
    .settingPaths()
    .filter((path) => !path.startsWith('flight.'))
    .flatMap((path) => {
      const value = view.written(path);
      return value === null ? [] : [{ path, value }];
    });
  return { version: 1, flight, pack, settings };
}

function flightParameter(catalog: Catalog, setting: string): FoundParameter | undefined {
  return catalog.parameter(flightPath(setting));
}

/** The setting of any flight. */
export function flightPath(setting: string): string {
  return `flight.any.${setting}`;
}

/** As a script writes it: a bare number gets its parameter's unit, words get their quotes. */
export function asWritten({ parameter }: FoundParameter, typed: string): string {
  const text = typed.trim();
  if (parameter.kind === 'text') return quoted(onOneLine(text));
  return parameter.kind === 'quantity' ? withUnit(text, parameter.unit) : text;
}

function onOneLine(text: string): string {
  return text.replace(/\s+/g, ' ');
}

/** `day-2026-05-14`, or the first with a number behind it that is free. */
export function freeName(taken: readonly string[], name: string): string {
  if (!taken.includes(name)) return name;
  for (let count = 2; ; count += 1) if (!taken.includes(`${name}-${count}`)) return `${name}-${count}`;
}

/** "gyro.filter.1.cutoff 225 Hz → 180 Hz; …", cut to what the script takes. */
function changedText(view: CraftView, last: Flown): string {
  const before = new Map(last.settings.map(({ path, value }) => [path, value]));
  const paths = [...new Set([...before.keys(), ...view.craft.settingPaths()])];
  const changes = paths
    .filter((path) => !path.startsWith('flight.') && view.catalog.parameter(path) !== undefined)
    .flatMap((path) => {
      const [was, is] = [before.get(path) ?? null, view.written(path)];
      return was === is || (was === null && !view.isSet(path))
        ? []
        : [`${path} ${was ?? 'not set'} → ${is ?? 'not set'}`];
    });
  const parameter = flightParameter(view.catalog, 'changed')?.parameter;
  const longest = parameter?.kind === 'text' ? parameter.longest : 300;
  const text = changes.join('; ').replaceAll('"', "'");
  return text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;
}

function added(script: Script, section: string): DocumentEdit {
  const { document } = script;
  const end = document.lineEnd;
  const headers = [...document.lines()].filter(
    ({ statement, section: { path } }) =>
      statement.kind === 'section' && path?.startsWith('flight.') === true,
  );
  const header = headers.at(-1);
  const line =
    header === undefined ? document.lineAt(document.lineCount - 1) : lastSettingUnder(script, header);
  if (line === undefined) throw new Error('a document always has a line');
  const at = { line: document.lineNumberOf(line), character: line.text.length };
  // The last line of a file is mostly an empty one: the section starts on it, after a blank line.
  const isEmpty = header === undefined && line.text.trim() === '';
  const before = isEmpty ? (document.lineCount > 1 ? end : '') : `${end}${end}`;
  const after = header === undefined ? end : '';
  return { start: at, end: at, text: `${before}${section}${after}` };
}
