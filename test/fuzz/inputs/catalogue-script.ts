import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import type { KnownParameter } from '../../../server/src/catalog/known-parameter';
import { staticWords } from '../../../server/src/craft/line-check';
import { exactText } from '../../../server/src/units/quantity';
import { testCatalog } from '../../support/catalog';

const root = join(__dirname, '../../..');

/** Every script of the repository: the demo, the starters and the faulty ones. */
const realScripts: readonly string[] = ['test/demo', 'client/starters', 'test/faults'].flatMap((folder) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.craft'))
    .map((name) => readFileSync(join(root, folder, name), 'utf8')),
);

const realLines = [...new Set(realScripts.flatMap((text) => text.split(/\r\n|\r|\n/)))];
const members = [
  'one',
  'two',
  '1',
  '2',
  'front-left',
  'roll',
  'arm',
  'uart1',
  'name',
  'captured',
  '__proto__',
];

const share = fc.oneof(fc.constantFrom(0, 1, -0.01, 1.01), fc.double({ min: 0, max: 1, noNaN: true }));

/** A value as a pilot may write it for a parameter: mostly one that it takes. */
function valueFor(known: KnownParameter): fc.Arbitrary<string> {
  const { parameter, range, unit } = known;
  const words = [
    ...(staticWords(known, testCatalog) ?? []),
    ...('orWords' in parameter ? (parameter.orWords ?? []).map(({ name }) => name) : []),
    ...testCatalog.choices(parameter).map(({ name }) => name),
  ];
  const word = words.length === 0 ? [] : [fc.constantFrom(...words)];
  const number = range === undefined ? fc.integer().map(String) : within(range, unit);
  switch (parameter.kind) {
    case 'quantity':
      return fc.oneof(number, ...word);
    case 'count':
      return fc.oneof(
        fc.integer({ min: (range?.low ?? 0) - 1, max: (range?.high ?? 9) + 1 }).map(String),
        ...word,
      );
    case 'flag':
      return fc.constantFrom('on', 'off');
    case 'word':
      return fc.oneof(fc.constantFrom('uart1', 'rail-5v', 'one'), ...word);
    case 'words':
      return fc
        .array(fc.oneof(fc.constant('one'), ...word), { maxLength: 5 })
        .map((list) => `[${list.join(', ')}]`);
    case 'range':
      return fc.tuple(number, number).map(([low, high]) => `${low}..${high}`);
    case 'place':
      return fc.tuple(fc.nat(40), fc.nat(70)).map(([row, column]) => `[${row}, ${column}]`);
    case 'text':
      return fc
        .string({ unit: 'grapheme', maxLength: 12 })
        .map((text) => `"${text.replace(/["\\\r\n]/g, '')}"`);
    case 'bare':
      return fc.constantFrom('0x1F', '1,5', '8000 4000', '"a # b"', '', 'größe');
    case 'date':
      return fc.constantFrom('2026-05-14', '2026-02-30', '1999-12-31');
    case 'curve':
      return fc
        .array(fc.tuple(fc.nat(100), fc.integer({ min: -10, max: 2000 })), { minLength: 1, maxLength: 4 })
        .map((points) => points.map(([x, y]) => `${x} % -> ${y} deg/s`).join(', '));
  }
}

function within(range: { low: number; high: number }, unit: KnownParameter['unit']): fc.Arbitrary<string> {
  return share.map((at) => {
    const value = range.low + at * (range.high - range.low);
    return unit === undefined ? String(value) : exactText(value, unit);
  });
}

const parameters = [...testCatalog.parameters.values()];
/** A line that sets something that the catalogue has. */
export const setting: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...parameters), fc.constantFrom(...members), fc.constantFrom(...parameters))
  .chain(([known, member, other]) => {
    const path = (name: string) => name.replaceAll(/<[a-z]+>/g, member);
    const value = fc.oneof(
      { weight: 12, arbitrary: valueFor(known) },
      { weight: 1, arbitrary: fc.constant(path(other.name)) },
      { weight: 1, arbitrary: valueFor(other) },
      { weight: 1, arbitrary: fc.constantFrom('', 'quiet', '2 * quiet', 'min(1, quiet)', '-1', '1e999') },
    );
    return value.map((text) => `${path(known.name)} = ${text}`);
  });

const sections = [...new Set(parameters.map(({ name }) => name.split('.').slice(0, -1).join('.')))];
const section = fc
  .tuple(
    fc.constantFrom(...sections),
    fc.constantFrom(...members),
    fc.constantFrom('', '', '', ' @ one', ' @ two'),
  )
  .map(([name, member, pack]) => `[${name.replaceAll(/<[a-z]+>/g, member)}${pack}]`);
/** Full paths are read from no section: a header of nothing brings the script back to its start. */
const line = fc.oneof(
  { weight: 10, arbitrary: setting },
  { weight: 5, arbitrary: fc.constantFrom(...realLines) },
  { weight: 2, arbitrary: section },
  { weight: 1, arbitrary: fc.constantFrom('let quiet = 90 Hz', 'include "one.craft"', '', '# note') },
);

/** Scripts that name everything that the catalogue has, with values that it takes or nearly takes. */
export const catalogueScript: fc.Arbitrary<string> = fc.oneof(
  { weight: 3, arbitrary: fc.array(line, { maxLength: 30 }).map((lines) => lines.join('\n')) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom(...realScripts), fc.array(fc.tuple(share, line), { maxLength: 5 }))
      .map(([text, put]) => put.reduce(withLine, text)),
  },
);

/** Puts a line in the place of another one. */
function withLine(text: string, [at, put]: readonly [number, string]): string {
  const lines = text.split('\n');
  return lines.with(Math.max(0, Math.min(lines.length - 1, Math.floor(at * lines.length))), put).join('\n');
}
