import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The same settings for each kind of server, 1 % of them wrong: out of range, an unknown word, an unknown name. */
export interface EqualWork {
  readonly craft: EditedText;
  readonly json: EditedText;
  readonly yaml: EditedText;
}

/** A text with a place in its middle where one character in front of a number takes it out of its range and back. */
export interface EditedText {
  readonly text: string;
  readonly place: Place;
}

export interface Place {
  readonly line: number;
  readonly character: number;
}

interface Row {
  readonly name: string;
  readonly unit: string;
  value(entry: number): string | number;
  readonly wrong?: string | number;
  readonly wrongName?: string;
}

/** What a pilot notes after a flight, as the demo craft flies. Every hundredth setting falls on one of the three rows with something wrong. */
const rows: readonly Row[] = [
  { name: 'minutes', unit: 'min', value: (entry) => 10 + (entry % 2) },
  { name: 'packs-flown', unit: '', value: (entry) => 1 + (entry % 9) },
  { name: 'pack', unit: '', value: (entry) => (entry % 2 === 0 ? 'single' : 'pair'), wrong: 'triple' },
  { name: 'motor-temperature', unit: 'degC', value: (entry) => 30 + (entry % 25) },
  { name: 'air-temperature', unit: 'degC', value: (entry) => 5 + (entry % 25) },
  { name: 'esc-temperature', unit: 'degC', value: (entry) => 35 + (entry % 25) },
  { name: 'wind', unit: 'm/s', value: (entry) => entry % 7, wrong: 90 },
  { name: 'rest-cell', unit: 'V', value: (entry) => 3.7 + (entry % 20) / 100 },
  { name: 'hover-throttle', unit: '%', value: (entry) => 38 + (entry % 8) },
  { name: 'hover-current', unit: 'A', value: (entry) => 2 + (entry % 10) / 10 },
  { name: 'used-charge', unit: 'mAh', value: (entry) => 100 + (entry % 100), wrongName: 'used-chargee' },
  { name: 'weakest-link', unit: '%', value: (entry) => 55 + (entry % 45) },
];

interface Setting {
  readonly name: string;
  readonly unit: string;
  readonly value: string | number;
}

/** So many settings for all. The craft script begins with a whole craft, so that every rule has something to do. */
export function equalWork(settings: number, root: string): EqualWork {
  const head = readFileSync(join(root, 'test/demo/wagtail.craft'), 'utf8').trimEnd();
  const inHead = head.split('\n').filter((line) => /^[^#"]*=/.test(line)).length;
  return {
    craft: craftText(head, entriesOf(Math.max(settings - inHead, rows.length))),
    json: jsonText(entriesOf(settings)),
    yaml: yamlText(entriesOf(settings)),
  };
}

/** The settings, by the flight that they are of. */
function entriesOf(count: number): readonly (readonly Setting[])[] {
  const all = Array.from({ length: count }, (_, index) => settingAt(index));
  const entries: Setting[][] = [];
  for (let from = 0; from < count; from += rows.length) entries.push(all.slice(from, from + rows.length));
  return entries;
}

function settingAt(index: number): Setting {
  const row = rows[index % rows.length];
  if (row === undefined) throw new Error('there are no rows');
  const { name, unit, wrong, wrongName } = row;
  const value = row.value(Math.floor(index / rows.length));
  if (index % 100 !== 50) return { name, unit, value };
  return { name: wrongName ?? name, unit, value: wrong ?? value };
}

function flightName(entry: number): string {
  return `day-${String(entry + 1).padStart(5, '0')}`;
}

type Entries = readonly (readonly Setting[])[];

function craftText(head: string, entries: Entries): EditedText {
  const lines = entries.flatMap((settings, entry) => [
    '',
    `[flight.${flightName(entry)}]`,
    ...settings.map(({ name, value, unit }) => `${name} = ${[value, unit].join(' ').trimEnd()}`),
  ]);
  return edited([...head.split('\n'), ...lines], entries);
}

function jsonText(entries: Entries): EditedText {
  const lines = entries.flatMap((settings, entry) => [
    `    "${flightName(entry)}": {`,
    ...settings.map(({ name, value }, at) => `      ${json(name)}: ${json(value)}${comma(at, settings)}`),
    `    }${comma(entry, entries)}`,
  ]);
  return edited(['{', '  "flight": {', ...lines, '  }', '}'], entries);
}

function yamlText(entries: Entries): EditedText {
  const lines = entries.flatMap((settings, entry) => [
    `  ${flightName(entry)}:`,
    ...settings.map(({ name, value }) => `    ${name}: ${value}`),
  ]);
  return edited(['flight:', ...lines], entries);
}

function json(value: string | number): string {
  return JSON.stringify(value);
}

function comma(at: number, all: readonly unknown[]): string {
  return at === all.length - 1 ? '' : ',';
}

/** The text of the lines; its place is in front of the first number of the entry in the middle. */
function edited(lines: readonly string[], entries: Entries): EditedText {
  const name = flightName(Math.floor((entries.length - 1) / 2));
  const line = lines.findIndex((each) => each.includes(name)) + 1;
  const character = (lines[line] ?? '').search(/\d/);
  if (line === 0 || character < 0) throw new Error(`nothing can be edited in ${name}`);
  return { text: `${lines.join('\n')}\n`, place: { line, character } };
}
