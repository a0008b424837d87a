import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { shippedData } from '../catalog/shipped';

/**
 * Every name and every heading is plain English, or a term that the trade writes across makers. A word that
 * is neither was remembered from somewhere. The lists are short on purpose: who adds to them says why.
 */
const tradeTerms = new Map([
  ['esc', 'electronic speed controller, in every shop'],
  ['kv', 'speed constant of a motor, on every label'],
  ['dshot', 'digital motor signal, a wire protocol'],
  ['sbus', 'serial link of receivers, a wire protocol'],
  ['crsf', 'serial link of receivers, a wire protocol'],
  ['mavlink', 'telemetry protocol, an open standard'],
  ['gps', 'position from satellites, a word of everyday'],
  ['nmea', 'position sentences, a standard'],
  ['uart', 'serial port, in every data sheet'],
  ['awg', 'wire gauge, a standard'],
  ['pal', 'picture standard'],
  ['ntsc', 'picture standard'],
  ['lipo', 'lithium polymer, on every pack'],
  ['lifepo', 'lithium iron phosphate, LiFePO4'],
  ['li', 'of li-ion'],
  ['gyro', 'the sensor'],
  ['aetr', 'channel order letters'],
  ['y', 'of y6, a layout'],
  ['x', 'of quad-x, a layout'],
  ['quad', 'four motors'],
  ['hex', 'six motors'],
  ['octo', 'eight motors'],
  ['b', 'letter of a video band, printed across makers'],
  ['e', 'letter of a video band'],
  ['f', 'letter of a video band'],
  ['r', 'letter of a video band'],
  ['kbit', 'a unit'],
  ['s', 'a unit, in kbit/s'],
  ['ghz', 'a unit'],
  ['rpm', 'a unit'],
  ['csv', 'columns of text with commas, RFC 4180'],
]);

/** Ordinary words without a vowel, or of one or two letters. */
const shortWords = new Set(
  'a an as at be by do go if in is it no of off on or so to up us we per the and for its out try why dry fly sky my'.split(
    ' ',
  ),
);

function looksRemembered(word: string): boolean {
  if (tradeTerms.has(word) || shortWords.has(word)) return false;
  return word.length < 3 || !/[aeiouy]/.test(word);
}

/** Words in a name or a text, in small letters; units behind numbers and quoted names count as words too. */
function wordsIn(text: string): readonly string[] {
  const found = text.toLowerCase().match(/[a-z]+(?:['’][a-z]+)?/g) ?? [];
  return found.map((word) => word.replace(/['’].*$/, ''));
}

function names(): readonly string[] {
  const { bundle } = shippedData();
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  const choices = parameters.flatMap((one) => [
    ...('choices' in one ? (one.choices ?? []) : []),
    ...('orWords' in one ? (one.orWords ?? []) : []),
  ]);
  const members = bundle.collections.flatMap(({ keys }) => (keys.kind === 'closed' ? keys.members : []));
  const { boards, links, signals, chemistries, gauges, grids, bands, regions } = bundle;
  const hardware = boards.flatMap((board) => [
    ...(board.hardware?.ports ?? []),
    ...(board.hardware?.rails ?? []),
  ]);
  const rows = [
    choices,
    members,
    boards,
    links,
    signals,
    chemistries,
    gauges,
    grids,
    bands,
    regions,
    hardware,
  ];
  return [
    ...parameters.map(({ name }) => name),
    ...bundle.parameters.map(({ group }) => group),
    ...bundle.collections.map(({ path, placeholder }) => `${path}.${placeholder}`),
    ...bundle.checks.flatMap(({ checks }) => checks.map(({ id }) => id)),
    ...rows.flat().map(({ name }) => name),
  ];
}

/** Headings: people read them as one list. */
function titles(): readonly string[] {
  const { bundle } = shippedData();
  const { boards, links, signals, chemistries, grids, bands, regions } = bundle;
  const members = bundle.collections.flatMap(({ keys }) => (keys.kind === 'closed' ? keys.members : []));
  const rows = [boards, links, signals, chemistries, grids, bands, regions, members];
  return [
    ...bundle.parameters.flatMap(({ title, parameters }) => [title, ...parameters.map((one) => one.title)]),
    ...bundle.checks.flatMap(({ checks }) => checks.map(({ title }) => title)),
    ...rows.flat().flatMap(({ title }) => title ?? []),
  ];
}

/** What the demo and the starters say themselves: names, constants, texts, comments. */
function scripts(): readonly (readonly [file: string, text: string])[] {
  return ['test/demo', 'client/starters'].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.craft'))
      .map((name) => [`${folder}/${name}`, readFileSync(join(folder, name), 'utf8')] as const),
  );
}

/** Units as scripts write them stand behind numbers and are no names. */
const unitsBehindNumbers = /(?<=\d\s?)(?:[A-Za-zµ%]+(?:\/\([^)]*\)|[/^*][A-Za-z\d]+)*)/g;

describe('names of ours', () => {
  it('are lower-case words with hyphens; digits stand only where the trade writes them', () => {
    const digits = /^(dshot\d+|uart\d+|oneshot\d+|awg-\d+|lifepo4|y6|notch-\d|\d+v)$/;
    const odd = names()
      .flatMap((name) => name.split(/[./]/))
      .map((part) => part.replace(/^<|>$/g, ''))
      .filter((part) => !/^[a-z]+(-[a-z]+)*$/.test(part) && !digits.test(part));
    assert.deepEqual([...new Set(odd)], []);
  });

  it('hold no abbreviation beside the terms of the trade', () => {
    assert.deepEqual([...new Set(names().flatMap(wordsIn).filter(looksRemembered))], []);
  });

  it('are as plain in headings', () => {
    const odd = titles().filter((title) => /_/.test(title) || wordsIn(title).some(looksRemembered));
    assert.deepEqual(odd, []);
  });

  for (const [file, text] of scripts()) {
    it(`are as plain in ${file}`, () => {
      assert.doesNotMatch(text, /_/);
      // How a file ends is no name of ours.
      const plain = text
        .replace(/\.csv"/g, '"')
        .replace(unitsBehindNumbers, ' ')
        .replace(/\b(?:rpm\/V|deg\/s)\b/g, ' ');
      const odd = wordsIn(plain).filter(looksRemembered);
      assert.deepEqual([...new Set(odd)], []);
    });
  }

  it('are not written in capitals, as constants of programs are', () => {
    const shouted = [...names(), ...titles()].flatMap((text) => text.match(/\b[A-Z]{2,}\w*\b/g) ?? []);
    const unknown = shouted.filter((word) => !tradeTerms.has(word.toLowerCase().replace(/\d+$/, '')));
    assert.deepEqual([...new Set(unknown)], []);
  });

  it('that are allowed beside plain English are all in use', () => {
    const all = new Set([...names(), ...titles(), ...scripts().map(([, text]) => text)].flatMap(wordsIn));
    assert.deepEqual(
      [...tradeTerms.keys()].filter((term) => !all.has(term)),
      [],
    );
  });
});
